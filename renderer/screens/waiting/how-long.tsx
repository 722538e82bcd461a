// How long those who owe something usually take, as a table under the list.
import type { ProviderTurnaround } from '../../../app/contract/waiting-view.ts';
import { waitingText as text } from '../../text/waiting.ts';
import { SectionHead } from '../../ui/section-head.tsx';

export function HowLong({ turnaround }: { readonly turnaround: readonly ProviderTurnaround[] }) {
  const { turnaroundColumns: columns } = text;
  return (
    <section className="waiting-how-long" aria-labelledby="waiting-how-long">
      <SectionHead id="waiting-how-long" title={text.howLong} aside={text.howLongHint} />
      {turnaround.length === 0 ? (
        <p className="quiet">{text.noHistory}</p>
      ) : (
        <table>
          <thead>
            <tr>
              <th scope="col">{columns.provider}</th>
              <th scope="col">{columns.kind}</th>
              <th scope="col" className="amount">
                {columns.median}
              </th>
              <th scope="col" className="amount">
                {columns.eightieth}
              </th>
              <th scope="col" className="amount">
                {columns.cases}
              </th>
              <th scope="col" className="amount">
                {columns.late}
              </th>
            </tr>
          </thead>
          <tbody>
            {turnaround.map((one) => (
              <tr key={`${one.provider} ${one.kind} ${one.codeKind}`}>
                <th scope="row">{one.provider}</th>
                <td>{text.turnaroundFor(one.kind, one.codeKind)}</td>
                <td className="amount">{one.medianDays}</td>
                <td className="amount">{one.eightiethDays}</td>
                <td className="amount">{one.cases}</td>
                <td className="amount">{text.lateOf(one.late, one.promised)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}
