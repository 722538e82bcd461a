// The photographs of a sheet on the screen, two abreast as on paper, from the copies that paper gets.
import './picture-blocks.css';
import type { SheetBlock, SheetPicture } from '../../../app/domain/sheets/sheet.ts';
import { useAttachmentUrl } from '../../state/use-attachment-url.ts';
import { sheetsText } from '../../text/sheets.ts';

function Picture({ vehicleId, item }: { readonly vehicleId: string; readonly item: SheetPicture }) {
  const shown = useAttachmentUrl(vehicleId, item.attachmentId, 'print');
  return (
    <figure>
      {shown.state === 'here' ? (
        <img src={shown.url} alt={item.alternateText} />
      ) : (
        <p className="is-quiet">{shown.state === 'failed' ? shown.sentence : sheetsText.readingPicture}</p>
      )}
      <figcaption>{item.caption}</figcaption>
    </figure>
  );
}

export function Pictures({ block }: { readonly block: Extract<SheetBlock, { kind: 'pictures' }> }) {
  return (
    <div className="sheet-pictures">
      {block.items.map((item) => (
        <Picture key={item.attachmentId} vehicleId={block.vehicleId} item={item} />
      ))}
    </div>
  );
}
