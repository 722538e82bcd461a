// One photograph in the grid: small, with what is said about it. Opens to its form in its place.
import type { Attachment } from '../../../../app/domain/vehicle/attachment.ts';
import { attachmentsText as text } from '../../../text/attachments.ts';
import { sayDay } from '../../../text/say-day.ts';
import { ledgerText } from '../../../text/vehicle.ts';
import { Button } from '../../../ui/button.tsx';
import { withoutStamp } from '../ledger/fact-kind.ts';
import type { OpenEntry } from '../ledger/open-entries.ts';
import { useVehicle } from '../page/vehicle-context.ts';
import { AttachmentFields, attachmentName } from './attachment-fields.tsx';
import { Thumbnail } from './thumbnail.tsx';

export type AttachmentItemProps = {
  readonly item: Attachment;
  /** Set while its form is open. */
  readonly entry: OpenEntry | null;
  readonly hasDraft: boolean;
  readonly canWrite: boolean;
  readonly onOpen: () => void;
  readonly onCorrect: () => void;
  readonly onClosed: () => void;
};

/** Day, who sees it, whether it is printed: the same line for photographs and documents. */
export function AttachmentLine({ item }: { readonly item: Attachment }) {
  const { today, role } = useVehicle();
  // Sales sees only what is for everyone.
  const readers = role === 'sales' ? '' : text.readersShort[item.readers];
  const words = [sayDay(item.on, today), readers, item.isOnSheets ? text.onSheets : ''];
  return <span className="attachment-line">{words.filter((word) => word !== '').join(' · ')}</span>;
}

export function CorrectButton(props: Pick<AttachmentItemProps, 'item' | 'hasDraft' | 'onCorrect'>) {
  const { item } = props;
  // A document has its name; a photograph without words says nothing in a list, and on paper nothing to a listener.
  const word = item.kind !== 'pdf' && item.caption.trim() === '' ? text.describe : text.correct;
  return (
    <span className="attachment-correct">
      <Button kind="quiet" label={text.ofFile(word, attachmentName(item))} onPress={props.onCorrect}>
        {word}
      </Button>
      {props.hasDraft && <span className="ledger-unsaved">{ledgerText.notSaved}</span>}
    </span>
  );
}

export function Photograph({ item, entry, hasDraft, canWrite, onOpen, onCorrect, onClosed }: AttachmentItemProps) {
  const { id } = useVehicle();
  const isDescribed = item.caption.trim() !== '';
  return (
    <li className={`photograph${entry === null ? '' : ' is-open'}`} data-fact={item.id}>
      <button
        type="button"
        className="photograph-show"
        aria-label={text.show(attachmentName(item))}
        title={item.name}
        onClick={onOpen}
      >
        <Thumbnail vehicleId={id} attachmentId={item.id} />
      </button>
      {entry === null ? (
        <div className="photograph-words">
          <span className={isDescribed ? 'photograph-caption' : 'photograph-caption quiet'}>
            {isDescribed ? item.caption : text.notDescribed}
          </span>
          <AttachmentLine item={item} />
          {canWrite && <CorrectButton item={item} hasDraft={hasDraft} onCorrect={onCorrect} />}
        </div>
      ) : (
        <AttachmentFields fact={withoutStamp(item)} entry={entry} onClosed={onClosed} />
      )}
    </li>
  );
}
