// The cautions that stand beside a step and on a sheet, in this project's own words. They never replace the maker's information.
import { z } from 'zod';

export const cautionKeySchema = z.enum([
  'airbag-battery',
  'high-voltage',
  'supply-voltage',
  'never-interrupt',
  'vin-permanent',
  'keep-old-module',
  'moving-vehicle',
  'anti-theft-code',
]);
export type CautionKey = z.infer<typeof cautionKeySchema>;

export type Caution = { readonly title: string; readonly text: string };

/** Sources in the trade-fact sections named; the waiting time and the limits are always the maker's. */
export const cautions: Readonly<Record<CautionKey, Caution>> = {
  'airbag-battery': {
    title: 'Airbags can fire',
    text: 'Note all codes first, switch off, take the negative battery lead off and wait as long as the maker says before touching airbag parts. Use no memory keeper while you do.',
  },
  'high-voltage': {
    title: 'High voltage: qualified people only',
    text: 'Orange cables carry a voltage that kills. Only people qualified for it isolate the system, lock it off and prove it dead, as the maker describes. Everybody else keeps away from it.',
  },
  'supply-voltage': {
    title: 'Steady supply while programming',
    text: 'Connect a stabilised supply set to the voltage the maker names, switch consumers off and write down the volts before, the lowest, and after.',
  },
  'never-interrupt': {
    title: 'Never interrupt a write',
    text: 'Once writing has begun do not switch off, unplug, or move the vehicle. A half-written module may not answer again.',
  },
  'vin-permanent': {
    title: 'The VIN stays written',
    text: 'Many modules take a VIN once and keep it for good. Compare the VIN on the vehicle with the one about to be written, character by character, before you confirm.',
  },
  'keep-old-module': {
    title: 'Read the old module, and keep it',
    text: 'Read and save the old module before it leaves the vehicle. Keep it until the replacement is proven.',
  },
  'moving-vehicle': {
    title: 'Before moving it',
    text: 'With a faulty body module the lights, wipers, horn or steering lock may fail without warning. Try each of them standing, and do not drive or tow it unless it is known to be safe.',
  },
  'anti-theft-code': {
    title: 'Anti-theft codes',
    text: 'Only for a vehicle that the dealer owns, with proof of ownership on file. Wrong entries can lock the unit. The law and the maker’s rules of the place apply.',
  },
};

export const deferenceSentence =
  'The maker’s service information and local law come before this sheet. Work that needs a licence is for those who hold it.';
