// Photographs and documents of the vehicle: photographs as a grid, documents as a list, files added through a button, by dropping them
// anywhere on the page or by pasting.
import './attachments.css';
import { type ChangeEvent, useRef, useState } from 'react';
import type { Attachment } from '../../../../app/domain/vehicle/attachment.ts';
import { addFiles } from '../../../state/adding-files.ts';
import { openAttachment } from '../../../state/open-attachment.ts';
import { rightsHere } from '../../../state/rights-here.ts';
import { useDraftKeys } from '../../../state/use-edit-draft.ts';
import { attachmentsText as text } from '../../../text/attachments.ts';
import { sectionNames } from '../../../text/vehicle-entries.ts';
import { Button } from '../../../ui/button.tsx';
import { EmptyState } from '../../../ui/empty-state.tsx';
import { draftKey } from '../ledger/fact-form.tsx';
import { closeEntry, openEntry, useOpenEntry } from '../ledger/open-entries.ts';
import { useVehicle } from '../page/vehicle-context.ts';
import { VehicleSection } from '../page/vehicle-section.tsx';
import { AddingLines } from './adding-lines.tsx';
import { DocumentLine } from './document-line.tsx';
import { Photograph } from './photograph.tsx';
import { PictureDialog } from './picture-dialog.tsx';

const pictures = 'image/jpeg,image/png,.jpg,.jpeg,.png';
const documents = 'application/pdf,.pdf';

/** The newest day first; of one day in the order they were added. */
function inOrder(attachments: readonly Attachment[]): readonly Attachment[] {
  return attachments.toSorted((a, b) =>
    a.on < b.on ? 1 : a.on > b.on ? -1 : a.entered.at < b.entered.at ? -1 : a.entered.at > b.entered.at ? 1 : 0,
  );
}

function AddButton() {
  const { id, today, role } = useVehicle();
  const { addsDocuments } = rightsHere(role);
  const input = useRef<HTMLInputElement>(null);
  const onFiles = (event: ChangeEvent<HTMLInputElement>) => {
    const files = [...(event.target.files ?? [])];
    // Emptied, so that the same file may be chosen again once it was mended.
    event.target.value = '';
    if (files.length > 0) addFiles(id, files, today);
  };
  return (
    <span className="attachments-add">
      <Button tip={addsDocuments ? text.addHint : text.addHintPictures} onPress={() => input.current?.click()}>
        {text.add}
      </Button>
      <input
        ref={input}
        type="file"
        hidden
        multiple
        accept={addsDocuments ? `${pictures},${documents}` : pictures}
        aria-label={text.add}
        onChange={onFiles}
      />
    </span>
  );
}

export function AttachmentsSection() {
  const { id, vehicle, canPut, role } = useVehicle();
  const place = `${id}/attachments`;
  const entry = useOpenEntry(place);
  const draftKeys = useDraftKeys();
  const root = useRef<HTMLDivElement>(null);
  const [shownId, setShownId] = useState<string | null>(null);
  const all = inOrder(vehicle.attachments);
  const photographs = all.filter(({ kind }) => kind !== 'pdf');
  const papers = all.filter(({ kind }) => kind === 'pdf');
  const canWrite = canPut('attachments');
  const emptyToWrite = rightsHere(role).addsDocuments ? text.empty : text.emptyPictures;
  const emptySentence = canWrite ? emptyToWrite : text.emptyToRead;
  const close = (item: Attachment) => {
    closeEntry(place);
    // Where it was, or to the button of the section when it was taken off.
    requestAnimationFrame(() => {
      const back = root.current?.querySelector<HTMLElement>(`[data-fact="${item.id}"] .attachment-correct button`);
      (back ?? root.current?.querySelector<HTMLElement>('.attachments-add button'))?.focus();
    });
  };
  const propsOf = (item: Attachment) => ({
    item,
    entry: canWrite && entry?.id === item.id ? entry : null,
    hasDraft: draftKeys.has(draftKey(id, 'attachments', item.id)),
    canWrite,
    onCorrect: () => openEntry(place, item.id),
    onClosed: () => close(item),
  });
  return (
    <VehicleSection
      section="attachments"
      title={sectionNames.attachments}
      count={all.length}
      rootRef={root}
      {...(canWrite ? { action: <AddButton /> } : {})}
    >
      <AddingLines />
      {all.length === 0 && <EmptyState sentence={emptySentence} />}
      {photographs.length > 0 && (
        <ul className="photographs" aria-label={text.photographs}>
          {photographs.map((item) => (
            <Photograph key={item.id} {...propsOf(item)} onOpen={() => setShownId(item.id)} />
          ))}
        </ul>
      )}
      {papers.length > 0 && (
        <ul className="documents" aria-label={text.documents}>
          {papers.map((item) => (
            <DocumentLine key={item.id} {...propsOf(item)} onOpen={() => void openAttachment(id, item.id)} />
          ))}
        </ul>
      )}
      {shownId !== null && (
        <PictureDialog pictures={photographs} shownId={shownId} onShow={setShownId} onClose={() => setShownId(null)} />
      )}
    </VehicleSection>
  );
}
