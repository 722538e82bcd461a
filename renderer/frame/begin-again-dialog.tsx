// Asks before the sample is begun again, saying what goes and what is kept; afterwards says where the copy lies that was worked in.
import { beginAgainStore, beginSampleAgain, showPutAside } from '../state/other-fleet.ts';
import { useStore } from '../state/store.ts';
import { commonText } from '../text/common.ts';
import { sampleText as text } from '../text/sample.ts';
import { Button } from '../ui/button.tsx';
import { Dialog } from '../ui/dialog.tsx';

export function BeginAgainDialog() {
  const asked = useStore(beginAgainStore);
  if (asked === null) return null;
  const close = () => beginAgainStore.set(null);
  if (asked.state === 'done')
    return (
      <Dialog
        key="done"
        title={text.doneTitle}
        onClose={close}
        footer={
          <>
            <Button onPress={() => void showPutAside()}>{text.show}</Button>
            <Button kind="main" onPress={close}>
              {commonText.close}
            </Button>
          </>
        }
      >
        <p role="status">{text.doneSentence}</p>
        <p className="code put-aside">{asked.putAside}</p>
      </Dialog>
    );
  const isWorking = asked.state === 'working';
  return (
    <Dialog
      key="asked"
      title={text.title}
      // It cannot be called off half-way.
      onClose={() => !isWorking && close()}
      footer={
        <>
          <Button isDisabled={isWorking} whyDisabled={text.working} onPress={close}>
            {commonText.cancel}
          </Button>
          <Button
            kind="danger"
            isDisabled={isWorking}
            whyDisabled={text.working}
            onPress={() => void beginSampleAgain()}
          >
            {text.doIt}
          </Button>
        </>
      }
    >
      <p>{text.goes}</p>
      <p className="dialog-second">{text.kept}</p>
      {isWorking && <p role="status">{text.working}</p>}
    </Dialog>
  );
}
