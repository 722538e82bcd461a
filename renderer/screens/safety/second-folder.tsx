// The second folder for backups: chosen in the system's own dialog, and taken away again.
import type { SafetyView } from '../../../app/contract/safety-view.ts';
import { ask } from '../../bridge.ts';
import { takeDesk } from '../../state/desk-store.ts';
import { notify } from '../../state/notice-store.ts';
import { errorSentence } from '../../text/errors.ts';
import { safetyText as text } from '../../text/safety.ts';
import { Button } from '../../ui/button.tsx';
import { SectionHead } from '../../ui/section-head.tsx';

export function SecondFolder({
  view,
  readOnlyReason,
  onChanged,
}: {
  readonly view: SafetyView;
  readonly readOnlyReason: string | null;
  readonly onChanged: () => void;
}) {
  const { second } = view;
  const change = async (name: 'safety:choose-second' | 'safety:leave-second') => {
    const answer = await ask(name, {});
    if (!answer.ok) {
      notify('problem', errorSentence(answer.error));
      return;
    }
    takeDesk(answer.value.desk);
    const isOther = answer.value.safety.second?.folder !== second?.folder;
    if (isOther) notify('done', name === 'safety:choose-second' ? text.chosen : text.left);
    onChanged();
  };
  const why = { isDisabled: readOnlyReason !== null, whyDisabled: readOnlyReason ?? '' };
  return (
    <section className="safety-section" aria-labelledby="safety-second">
      <SectionHead id="safety-second" title={text.second} />
      <p className="safety-hint">{text.secondHint}</p>
      {second === null ? (
        <p>{text.secondNone}</p>
      ) : second.isThere ? (
        <p>{text.secondIs(second.folder)}</p>
      ) : (
        <p role="alert" className="safety-bad">
          {text.secondGone(second.folder)}
        </p>
      )}
      <div className="safety-buttons">
        {second?.isThere === false && <Button onPress={onChanged}>{text.tryAgain}</Button>}
        <Button {...why} onPress={() => void change('safety:choose-second')}>
          {second === null ? text.choose : text.chooseOther}
        </Button>
        {second !== null && (
          <Button {...why} kind="quiet" onPress={() => void change('safety:leave-second')}>
            {text.leave}
          </Button>
        )}
      </div>
    </section>
  );
}
