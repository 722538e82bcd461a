// Working time typed as people write it, kept in whole minutes.
import { labourText } from '../../../text/vehicle-work.ts';
import { TypedField, type TypedFieldProps } from '../../../ui/typed-field.tsx';
import { readMinutes, showMinutes } from './minutes-text.ts';

export function MinutesField(props: TypedFieldProps<number>) {
  return (
    <TypedField
      hint={labourText.minutesHint}
      {...props}
      inputMode="decimal"
      read={(text) => {
        const minutes = readMinutes(text);
        return minutes === null ? { ok: false } : { ok: true, value: minutes };
      }}
      show={showMinutes}
      whenUnreadable={labourText.notATime}
    />
  );
}
