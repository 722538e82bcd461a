// What is said about a photograph or document: the form of one, with its draft. The file itself never changes.
import {
  type AttachmentDraft,
  attachmentDraftSchema,
  attachmentReadersSchema,
} from '../../../../app/domain/vehicle/attachment.ts';
import { rightsHere } from '../../../state/rights-here.ts';
import { attachmentsText as text } from '../../../text/attachments.ts';
import { CheckField } from '../../../ui/check-field.tsx';
import { DayField } from '../../../ui/day-field.tsx';
import { SelectField } from '../../../ui/select-field.tsx';
import { TextField } from '../../../ui/text-field.tsx';
import { chooseFrom } from '../ledger/choices.ts';
import { FactForm } from '../ledger/fact-form.tsx';
import { asTyped, type FactKind } from '../ledger/fact-kind.ts';
import { FieldPlace } from '../ledger/field-place.tsx';
import type { OpenEntry } from '../ledger/open-entries.ts';
import { useVehicle } from '../page/vehicle-context.ts';

export const attachmentKind: FactKind<AttachmentDraft> = {
  list: 'attachments',
  schema: attachmentDraftSchema,
  toChange: (item) => ({ kind: 'put', list: 'attachments', item }),
  toValue: asTyped,
};

/** What it is called where one name has to do. */
export function attachmentName({ caption, name }: Pick<AttachmentDraft, 'caption' | 'name'>): string {
  return caption.trim() === '' ? name : caption;
}

type FieldsProps = { readonly fact: AttachmentDraft; readonly entry: OpenEntry; readonly onClosed: () => void };

export function AttachmentFields({ fact, entry, onClosed }: FieldsProps) {
  const { today, role } = useVehicle();
  const isPicture = fact.kind !== 'pdf';
  const mayBe = attachmentReadersSchema.options.filter((readers) =>
    rightsHere(role).readsAttachmentsFor.includes(readers),
  );
  return (
    <FactForm
      kind={attachmentKind}
      fact={fact}
      name={attachmentName(fact)}
      entry={entry}
      onSaved={onClosed}
      onClosed={onClosed}
    >
      {(edit) => (
        <>
          <div className="field-grid">
            <FieldPlace name="caption">
              <TextField
                label={isPicture ? text.caption : text.documentCaption}
                {...edit.at('caption')}
                hint={isPicture ? text.captionHint : undefined}
                isWide
              />
            </FieldPlace>
            <SelectField label={text.whoSees} {...edit.at('readers')} options={chooseFrom(mayBe, text.readers)} />
            <DayField label={text.on} {...edit.at('on')} today={today} isRequired />
            {isPicture && <CheckField label={text.print} {...edit.at('isOnSheets')} hint={text.printHint} isWide />}
          </div>
          <p className="attachment-stays">{text.takenOff}</p>
        </>
      )}
    </FactForm>
  );
}
