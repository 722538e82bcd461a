// Files that could not be used: which, why, where they are now, and the last good copy of each.
import type { SafetyView } from '../../../app/contract/safety-view.ts';
import { askDesk } from '../../state/desk-store.ts';
import { notify } from '../../state/notice-store.ts';
import { showMoment } from '../../text/instant.ts';
import { safetyText as text } from '../../text/safety.ts';
import { Button } from '../../ui/button.tsx';
import { SectionHead } from '../../ui/section-head.tsx';

export function TroubleTable({
  view,
  onLook,
  onSettled,
  isReadOnly,
}: {
  readonly view: SafetyView;
  readonly onLook: (id: string) => void;
  readonly onSettled: () => void;
  readonly isReadOnly: boolean;
}) {
  const settle = async (id: string, fileName: string) => {
    if (!(await askDesk('fleet:settle-trouble', { id }))) return;
    notify('done', text.settled(fileName));
    onSettled();
  };
  return (
    <section className="safety-section" aria-labelledby="safety-troubles">
      <SectionHead id="safety-troubles" title={text.troubles} count={view.troubles.length} />
      <p className="safety-hint">{view.troubles.length === 0 ? text.noTroubles : text.troublesHint}</p>
      {view.troubles.length > 0 && (
        <table className="safety-table">
          <thead>
            <tr>
              <th scope="col">{text.file}</th>
              <th scope="col">{text.wrong}</th>
              <th scope="col">{text.lastGood}</th>
              <th scope="col">
                <span className="unseen">{text.act}</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {view.troubles.map(({ id, fileName, sentence, quarantinedAs, lastGoodCopyAt }) => (
              <tr key={id}>
                <th scope="row" className="code">
                  {fileName}
                </th>
                <td>
                  {sentence} {quarantinedAs === null ? '' : text.movedTo(quarantinedAs)}
                </td>
                <td>{lastGoodCopyAt === null ? text.none : showMoment(lastGoodCopyAt)}</td>
                <td className="safety-actions">
                  {lastGoodCopyAt !== null && (
                    <Button label={text.lookAt(fileName)} onPress={() => onLook(id)}>
                      {text.look}
                    </Button>
                  )}
                  {!isReadOnly && quarantinedAs !== null && (
                    <Button
                      kind="quiet"
                      tip={text.settleTip}
                      label={`${text.settle}: ${fileName}`}
                      onPress={() => void settle(id, fileName)}
                    >
                      {text.settle}
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
