// Dated remarks.
import { type NoteDraft, noteDraftSchema } from '../../../../app/domain/vehicle/note.ts';
import { sayDay } from '../../../text/say-day.ts';
import { sectionNames } from '../../../text/vehicle-entries.ts';
import { noteText } from '../../../text/vehicle-work.ts';
import { DayField } from '../../../ui/day-field.tsx';
import { ParagraphField } from '../../../ui/text-field.tsx';
import { personName } from '../ledger/choices.ts';
import { asTyped, type FactKind } from '../ledger/fact-kind.ts';
import { Ledger } from '../ledger/ledger.tsx';
import { useVehicle } from '../page/vehicle-context.ts';

const noteKind: FactKind<NoteDraft> = {
  list: 'notes',
  schema: noteDraftSchema,
  toChange: (item) => ({ kind: 'put', list: 'notes', item }),
  toValue: asTyped,
};

export function NotesSection() {
  const { vehicle, desk, today } = useVehicle();
  const notes = vehicle.notes.toSorted((a, b) =>
    a.on < b.on ? 1 : a.on > b.on ? -1 : a.entered.at < b.entered.at ? 1 : -1,
  );
  const authorOf = (id: string) => notes.find((note) => note.id === id)?.entered.by ?? '';
  return (
    <Ledger
      section="notes"
      title={sectionNames.notes}
      kind={noteKind}
      facts={notes}
      nameOf={(note) => note.text.split('\n')[0]?.slice(0, 60) ?? ''}
      addLabel={noteText.add}
      emptySentence={noteText.empty}
      makeNew={(id) => ({ id, on: today, text: '' })}
      columns={[
        { title: noteText.text, cell: (note) => <span className="note-text">{note.text}</span> },
        { title: noteText.on, cell: (note) => sayDay(note.on, today), isTight: true },
        {
          title: noteText.by,
          isTitleUnseen: true,
          cell: (note) => <span className="quiet">{personName(desk, authorOf(note.id))}</span>,
          isTight: true,
        },
      ]}
      form={(edit) => (
        <div className="field-grid">
          <ParagraphField label={noteText.text} {...edit.at('text')} hint={noteText.hint} rows={3} isWide isRequired />
          <DayField label={noteText.on} {...edit.at('on')} today={today} isRequired />
        </div>
      )}
    />
  );
}
