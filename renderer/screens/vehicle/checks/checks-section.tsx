// The shop's checklist on this vehicle: who signs what, what was signed, and what has to be signed again because of later work.
import { sectionNames } from '../../../text/vehicle-entries.ts';
import { checkText } from '../../../text/vehicle-work.ts';
import { EmptyState } from '../../../ui/empty-state.tsx';
import { useVehicle } from '../page/vehicle-context.ts';
import { VehicleSection } from '../page/vehicle-section.tsx';
import { CheckRow } from './check-row.tsx';

export function ChecksSection() {
  const { desk, view } = useVehicle();
  const checks = (desk.shop?.checklist ?? []).filter((check) => check.isActive);
  const open = checks.filter((check) => {
    const gate = view.readiness.gates.find((candidate) => candidate.key === `check:${check.id}`);
    return gate?.state === 'open' || gate?.state === 'stale';
  });
  return (
    <VehicleSection
      section="checks"
      title={sectionNames.checks}
      aside={`${checks.length - open.length} / ${checks.length}`}
    >
      {checks.length === 0 ? (
        <EmptyState sentence={checkText.empty} />
      ) : (
        <table className="ledger">
          <thead>
            <tr>
              <th scope="col">{checkText.check}</th>
              <th scope="col">{checkText.who}</th>
              <th scope="col">{checkText.state}</th>
              <th scope="col" className="ledger-actions">
                <span className="unseen">{checkText.result}</span>
              </th>
            </tr>
          </thead>
          {(['verify', 'present'] as const).map((stage) => (
            <tbody key={stage}>
              <tr className="ledger-group">
                <th scope="rowgroup" colSpan={4}>
                  {checkText.stages[stage]}
                </th>
              </tr>
              {checks
                .filter((check) => check.stage === stage)
                .map((check) => (
                  <CheckRow key={check.id} check={check} />
                ))}
            </tbody>
          ))}
        </table>
      )}
    </VehicleSection>
  );
}
