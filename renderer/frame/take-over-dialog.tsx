// Asks once more before this desk opens for writing what another desk seems to have left open.
import { askDesk } from '../state/desk-store.ts';
import { notify } from '../state/notice-store.ts';
import { commonText } from '../text/common.ts';
import { frameText } from '../text/frame.ts';
import { Button } from '../ui/button.tsx';
import { Dialog } from '../ui/dialog.tsx';

async function takeOver(): Promise<void> {
  if (await askDesk('fleet:take-over', {})) notify('done', frameText.tookOver);
}

export function TakeOverDialog({ onClose }: { readonly onClose: () => void }) {
  return (
    <Dialog
      title={frameText.takeOver}
      onClose={onClose}
      footer={
        <>
          <Button onPress={onClose}>{commonText.cancel}</Button>
          <Button
            kind="danger"
            onPress={() => {
              onClose();
              void takeOver();
            }}
          >
            {frameText.takeOverDo}
          </Button>
        </>
      }
    >
      <p>{frameText.takeOverSentence}</p>
    </Dialog>
  );
}
