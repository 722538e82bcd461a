// Short words of our own for the failure type byte, the third byte of a trouble code. Not the wording of SAE J2012-DA, which is sold.

/** Groups by the first hex digit: SAE J2012-DA as two public lists give it up to 6; 8 and 9 from memory. */
const groups: ReadonlyMap<string, string> = new Map([
  ['0', 'general electrical fault'],
  ['1', 'electrical fault in the circuit'],
  ['2', 'signal out of line'],
  ['3', 'timed or pulsed signal at fault'],
  ['4', 'fault inside the module'],
  ['5', 'programming of the module'],
  ['6', 'calculation or comparison at fault'],
  ['7', 'mechanical fault'],
  ['8', 'message on the data bus at fault'],
  ['9', 'fault of the part itself'],
]);

/** SAE J2012-DA numbers, two public lists agreeing up to 67; 81 and above from memory. Words are our own. */
const wordsByByte: ReadonlyMap<string, string> = new Map([
  ['00', 'no further detail'],
  ['01', 'electrical fault'],
  ['02', 'signal fault'],
  ['03', 'pulsed signal fault'],
  ['04', 'fault inside the module'],
  ['05', 'programming fault'],
  ['06', 'calculated fault'],
  ['07', 'mechanical fault'],
  ['08', 'data bus or message fault'],
  ['09', 'part at fault'],
  ['11', 'shorted to ground'],
  ['12', 'shorted to battery'],
  ['13', 'circuit open'],
  ['14', 'shorted to ground or open'],
  ['15', 'shorted to battery or open'],
  ['16', 'voltage too low'],
  ['17', 'voltage too high'],
  ['18', 'current too low'],
  ['19', 'current too high'],
  ['1A', 'resistance too low'],
  ['1B', 'resistance too high'],
  ['1C', 'voltage out of range'],
  ['1D', 'current out of range'],
  ['1E', 'resistance out of range'],
  ['1F', 'circuit comes and goes'],
  ['21', 'signal too small'],
  ['22', 'signal too large'],
  ['23', 'signal stuck low'],
  ['24', 'signal stuck high'],
  ['25', 'wrong shape of signal'],
  ['26', 'signal changes too slowly'],
  ['27', 'signal changes too fast'],
  ['28', 'zero point is off'],
  ['29', 'signal makes no sense'],
  ['2A', 'signal does not move'],
  ['2F', 'signal jumps about'],
  ['31', 'no signal'],
  ['32', 'low for too short a time'],
  ['33', 'low for too long a time'],
  ['34', 'high for too short a time'],
  ['35', 'high for too long a time'],
  ['36', 'frequency too low'],
  ['37', 'frequency too high'],
  ['38', 'wrong frequency'],
  ['39', 'too few pulses'],
  ['3A', 'too many pulses'],
  ['41', 'checksum does not match'],
  ['42', 'memory fault'],
  ['43', 'fault in special memory'],
  ['44', 'fault in data memory'],
  ['45', 'fault in program memory'],
  ['46', 'fault in calibration memory'],
  ['47', 'safety processor or watchdog fault'],
  ['48', 'supervising software fault'],
  ['49', 'electronics inside the module failed'],
  ['4A', 'wrong part fitted'],
  ['4B', 'too hot'],
  ['51', 'not programmed'],
  ['52', 'not activated'],
  ['53', 'switched off'],
  ['54', 'calibration missing'],
  ['55', 'not configured'],
  ['61', 'calculation fault'],
  ['62', 'values do not agree'],
  ['63', 'protective time limit reached'],
  ['64', 'values are not plausible together'],
  ['81', 'invalid data received'],
  ['82', 'message counter wrong'],
  ['83', 'message protection value wrong'],
  ['86', 'signal in the message invalid'],
  ['87', 'message missing'],
  ['88', 'data bus off'],
  ['92', 'works badly'],
  ['93', 'does not work'],
  ['96', 'part failed inside'],
]);

/** Types that say the module is fitted but its programming or coding is outstanding. From the meaning of the numbers above. */
const unfinishedModuleWork: ReadonlySet<string> = new Set(['4A', '51', '52', '54', '55']);

/** `hex` is two capital hex digits. Null when the number is not known here and its group is not either. */
export function failureTypeWords(hex: string): string | null {
  return wordsByByte.get(hex) ?? groups.get(hex.charAt(0)) ?? null;
}

/** True when the failure type says that programming, coding, calibration or the right part is still missing. */
export function saysModuleWorkUnfinished(hex: string): boolean {
  return unfinishedModuleWork.has(hex);
}
