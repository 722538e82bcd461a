// What putting one copy back changes, fact by fact: as it is now, as it is in the copy.
import type { PutBackPreview } from '../../../app/contract/safety-view.ts';
import { safetyText as text } from '../../text/safety.ts';

export function ChangeList({ preview }: { readonly preview: PutBackPreview }) {
  return (
    <>
      <p>{text.one[preview.effect]}</p>
      {preview.changes.length > 0 && (
        <table className="safety-table">
          <thead>
            <tr>
              <th scope="col">{text.what}</th>
              <th scope="col">{text.now}</th>
              <th scope="col">{text.inCopy}</th>
            </tr>
          </thead>
          <tbody>
            {preview.changes.map(({ what, from, to }) => (
              <tr key={`${what} ${from} ${to}`}>
                <th scope="row">{text.value(what)}</th>
                <td>{text.value(from)}</td>
                <td>{text.value(to)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {preview.isShortened && <p className="quiet">{text.shortened}</p>}
      {preview.effect !== 'same' && preview.effect !== 'mends' && <p className="quiet">{text.before}</p>}
    </>
  );
}
