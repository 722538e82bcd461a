// A photograph as large as the window lets it be, with what is known of it. Arrow keys go to the next and the one before, Esc closes.
import { type KeyboardEvent, useState } from 'react';
import type { Attachment } from '../../../../app/domain/vehicle/attachment.ts';
import { openAttachment } from '../../../state/open-attachment.ts';
import { useAttachmentUrl } from '../../../state/use-attachment-url.ts';
import { attachmentsText as text } from '../../../text/attachments.ts';
import { commonText } from '../../../text/common.ts';
import { sayDay } from '../../../text/say-day.ts';
import { Button } from '../../../ui/button.tsx';
import { Dialog } from '../../../ui/dialog.tsx';
import { personName } from '../ledger/choices.ts';
import { useVehicle } from '../page/vehicle-context.ts';
import { attachmentName } from './attachment-fields.tsx';

function Picture({ vehicleId, shown }: { readonly vehicleId: string; readonly shown: Attachment }) {
  const picture = useAttachmentUrl(vehicleId, shown.id, 'whole');
  const [isBroken, setIsBroken] = useState(false);
  const isFailed = picture.state === 'failed' || isBroken;
  return (
    <div className="picture-large">
      {picture.state === 'here' && !isBroken && (
        <img src={picture.url} alt={attachmentName(shown)} onError={() => setIsBroken(true)} />
      )}
      {(picture.state === 'reading' || isFailed) && (
        <p className="quiet" role="status">
          {picture.state === 'failed' ? picture.sentence : isBroken ? text.unseen : text.reading}
        </p>
      )}
    </div>
  );
}

export type PictureDialogProps = {
  readonly pictures: readonly Attachment[];
  readonly shownId: string;
  readonly onShow: (id: string) => void;
  readonly onClose: () => void;
};

export function PictureDialog({ pictures, shownId, onShow, onClose }: PictureDialogProps) {
  const { id, desk, today } = useVehicle();
  const at = pictures.findIndex((picture) => picture.id === shownId);
  const shown = pictures[at];
  if (shown === undefined) return null;
  const before = pictures[at - 1];
  const after = pictures[at + 1];
  const { widthDots, heightDots, name, sizeBytes, entered } = shown;
  const dots = widthDots === null || heightDots === null ? '' : `${widthDots} × ${heightDots}`;
  const onKeyDown = (event: KeyboardEvent) => {
    const wanted = event.key === 'ArrowLeft' ? before : event.key === 'ArrowRight' ? after : undefined;
    if (wanted === undefined) return;
    event.preventDefault();
    onShow(wanted.id);
  };
  return (
    <Dialog title={attachmentName(shown)} onClose={onClose} isWide footer={null}>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: keys for the whole dialog; its buttons do the same. */}
      <div className="picture-dialog" onKeyDown={onKeyDown}>
        <Picture key={shown.id} vehicleId={id} shown={shown} />
        <p>
          {sayDay(shown.on, today)} · {text.readers[shown.readers]}
          {shown.isOnSheets && ` · ${text.onSheets}`}
        </p>
        <p className="quiet">
          {text.facts(name, sizeBytes, dots)} ·{' '}
          {text.addedBy(personName(desk, entered.by), sayDay(entered.at.slice(0, 10), today))}
        </p>
        <div className="picture-foot">
          <Button
            shortcut="ArrowLeft"
            isDisabled={before === undefined}
            whyDisabled={text.isFirst}
            onPress={() => before !== undefined && onShow(before.id)}
          >
            {text.previous}
          </Button>
          <Button
            shortcut="ArrowRight"
            isDisabled={after === undefined}
            whyDisabled={text.isLast}
            onPress={() => after !== undefined && onShow(after.id)}
          >
            {text.next}
          </Button>
          <span className="quiet" role="status">
            {text.place(at + 1, pictures.length)}
          </span>
          <span className="picture-foot-end">
            <Button kind="quiet" onPress={() => void openAttachment(id, shown.id)}>
              {text.openOutside}
            </Button>
            <Button onPress={onClose}>{commonText.close}</Button>
          </span>
        </div>
      </div>
    </Dialog>
  );
}
