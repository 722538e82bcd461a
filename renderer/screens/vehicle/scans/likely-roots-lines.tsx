// Where to look first: the module that several others point at, with the reasoning, and the way to make it a fault.
import { contentOf } from '../../../../app/domain/diagnosis/compare-scans.ts';
import { likelyRoots } from '../../../../app/domain/diagnosis/likely-roots.ts';
import { moduleKindWords } from '../../../../app/domain/diagnosis/module-kinds.ts';
import type { Scan } from '../../../../app/domain/diagnosis/scan.ts';
import { rootText } from '../../../text/scans.ts';
import { useVehicle } from '../page/vehicle-context.ts';
import { FaultButton } from './code-line.tsx';
import { faultFromRoot, faultOfRoot } from './new-fault.ts';

export function LikelyRoots({ scan }: { readonly scan: Scan }) {
  const { vehicle } = useVehicle();
  const roots = likelyRoots(contentOf(scan));
  if (roots.length === 0) return null;
  return (
    <section className="roots" aria-label={rootText.title}>
      <h3>{rootText.title}</h3>
      <ul>
        {roots.map((root) => {
          const name = root.module ?? (root.kind === null ? '' : moduleKindWords[root.kind]);
          return (
            <li key={`${name} ${root.reasoning}`}>
              <p>
                <b>{name}</b> <span className="root-strength">{rootText.strength[root.strength]}</span>{' '}
                <FaultButton found={faultOfRoot(vehicle, root)} draft={faultFromRoot(root)} foundOn={scan.takenOn} />
              </p>
              <p className="quiet">{root.reasoning}</p>
              <p className="code-detail">
                {root.witnesses.map((witness) => `${witness.module}: ${witness.code}`).join(' · ')}
              </p>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
