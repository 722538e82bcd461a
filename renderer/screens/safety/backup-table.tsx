// The backups, newest first: when and why each was made, what it holds, whether it can be used, and where it lies.
import type { ReactNode } from 'react';
import type { SafetyView } from '../../../app/contract/safety-view.ts';
import { showMoment } from '../../text/instant.ts';
import { safetyText as text } from '../../text/safety.ts';
import { Button } from '../../ui/button.tsx';
import { SectionHead } from '../../ui/section-head.tsx';

export function BackupTable({
  view,
  onLook,
  action,
}: {
  readonly view: SafetyView;
  readonly onLook: (id: string) => void;
  readonly action: ReactNode;
}) {
  return (
    <section className="safety-section" aria-labelledby="safety-backups">
      <SectionHead id="safety-backups" title={text.backups} count={view.backups.length} action={action} />
      {view.backups.length === 0 ? (
        <p className="safety-hint">{text.noBackups}</p>
      ) : (
        <table className="safety-table">
          <thead>
            <tr>
              <th scope="col">{text.made}</th>
              <th scope="col">{text.why}</th>
              <th scope="col">{text.holds}</th>
              <th scope="col">{text.where}</th>
              <th scope="col">{text.state}</th>
              <th scope="col">
                <span className="unseen">{text.act}</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {view.backups.map((backup) => (
              <tr key={backup.id}>
                <th scope="row">{showMoment(backup.madeAt)}</th>
                <td>{text.reasons[backup.reason]}</td>
                <td>
                  {backup.isGood ? text.vehicles(backup.vehicleCount) : ''}
                  {backup.attachmentsNotHeld > 0 && (
                    <div className="safety-bad">{text.notHeld(backup.attachmentsNotHeld)}</div>
                  )}
                </td>
                <td>{text.places[backup.where]}</td>
                <td className={backup.isGood ? undefined : 'safety-bad'}>{backup.isGood ? text.good : text.bad}</td>
                <td className="safety-actions">
                  {backup.isGood && (
                    <Button kind="quiet" label={text.openThis(backup)} onPress={() => onLook(backup.id)}>
                      {text.open}
                    </Button>
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}
