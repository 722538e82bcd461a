// One caution with its title and its words, where the work it belongs to is.
import { type CautionKey, cautions } from '../../../../app/domain/work/cautions.ts';

export function CautionLine({ caution, more }: { readonly caution: CautionKey; readonly more?: string }) {
  const { title, text } = cautions[caution];
  return (
    <p className="caution">
      <b>{title}.</b> {text}
      {more === undefined ? '' : ` ${more}`}
    </p>
  );
}
