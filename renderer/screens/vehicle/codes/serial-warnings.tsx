// Under the serial of a unit: what is unusual about it, and the reason for keeping it as it is.
import { checkSerialForm } from '../../../../app/domain/codes/code-form.ts';
import type { CodeKindFacts } from '../../../../app/domain/codes/code-kinds.ts';
import type { Editing } from '../../../state/use-edit-draft.ts';
import { codeText } from '../../../text/codes.ts';
import { TextField } from '../../../ui/text-field.tsx';
import { useVehicle } from '../page/vehicle-context.ts';
import type { CodeRequestValue } from './code-draft.ts';

export function SerialWarnings({
  edit,
  kind,
}: {
  readonly edit: Editing<CodeRequestValue>;
  readonly kind: CodeKindFacts | null;
}) {
  const { vehicle, desk, today } = useVehicle();
  if (kind === null) return null;
  const { deviceSerial, keptWarnings } = edit.value;
  return checkSerialForm(kind, deviceSerial, vehicle.identity.modelYear).map(({ key, sentence }) => {
    const others = keptWarnings.filter((kept) => kept.key !== key);
    const reason = keptWarnings.find((kept) => kept.key === key)?.reason ?? '';
    const keep = (text: string) =>
      edit.set({
        keptWarnings: text === '' ? others : [...others, { key, reason: text, by: desk.person.id, keptOn: today }],
      });
    return (
      <div key={key} className="code-warning">
        <p role="status" className={reason === '' ? 'field-problem' : 'quiet'}>
          {sentence}
        </p>
        <TextField label={codeText.keepReason} hint={codeText.keepReasonHint} value={reason} onChange={keep} isWide />
      </div>
    );
  });
}
