// One document in the list: its name opens it with the system's own program. Opens to its form under its line.
import { attachmentsText as text } from '../../../text/attachments.ts';
import { withoutStamp } from '../ledger/fact-kind.ts';
import { AttachmentFields, attachmentName } from './attachment-fields.tsx';
import { type AttachmentItemProps, AttachmentLine, CorrectButton } from './photograph.tsx';

export function DocumentLine({ item, entry, hasDraft, canWrite, onOpen, onCorrect, onClosed }: AttachmentItemProps) {
  const name = attachmentName(item);
  return (
    <li className={`document${entry === null ? '' : ' is-open'}`} data-fact={item.id}>
      <div className="document-row">
        <button type="button" className="document-name" aria-label={text.ofFile(text.open, name)} onClick={onOpen}>
          {name}
        </button>
        {item.caption.trim() !== '' && <span className="document-file quiet">{item.name}</span>}
        <span className="quiet">{text.size(item.sizeBytes)}</span>
        <AttachmentLine item={item} />
        {canWrite && entry === null && <CorrectButton item={item} hasDraft={hasDraft} onCorrect={onCorrect} />}
      </div>
      {entry !== null && <AttachmentFields fact={withoutStamp(item)} entry={entry} onClosed={onClosed} />}
    </li>
  );
}
