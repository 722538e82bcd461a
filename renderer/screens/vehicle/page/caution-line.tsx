// One caution by its key, where the work it belongs to is.
import { type CautionKey, cautions } from '../../../../app/domain/work/cautions.ts';
import { CautionNote } from '../../../ui/caution-note.tsx';

export function CautionLine({ caution, more = '' }: { readonly caution: CautionKey; readonly more?: string }) {
  return <CautionNote {...cautions[caution]} more={more} />;
}
