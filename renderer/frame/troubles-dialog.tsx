// Files of the fleet that could not be read: which, why, and the way to put the last good copy back.
import type { Desk } from '../../app/contract/views.ts';
import { askDesk } from '../state/desk-store.ts';
import { notify } from '../state/notice-store.ts';
import { frameText } from '../text/frame.ts';
import { showMoment } from '../text/instant.ts';
import { Button } from '../ui/button.tsx';
import { Dialog } from '../ui/dialog.tsx';

type Trouble = Desk['troubles'][number];

async function restore({ id, fileName }: Trouble): Promise<void> {
  if (await askDesk('fleet:restore-trouble', { id })) notify('done', frameText.restored(fileName));
}

async function settle({ id, fileName }: Trouble): Promise<void> {
  if (await askDesk('fleet:settle-trouble', { id })) notify('done', frameText.settled(fileName));
}

export function TroublesDialog({ desk, onClose }: { readonly desk: Desk; readonly onClose: () => void }) {
  const isManager = desk.person.role === 'manager';
  const gate = {
    isDisabled: !isManager || desk.readOnlyReason !== null,
    whyDisabled: desk.readOnlyReason ?? frameText.onlyManagers,
  };
  return (
    <Dialog title={frameText.troubles} onClose={onClose} isWide>
      <p>{frameText.troublesSentence}</p>
      <ul className="troubles">
        {desk.troubles.map((trouble) => (
          <li key={trouble.id}>
            <div>
              <b className="code">{trouble.fileName}</b>
              <p>{trouble.sentence}</p>
              <p className="quiet">
                {trouble.lastGoodCopyAt === null
                  ? frameText.noGoodCopy
                  : frameText.lastGoodCopy(showMoment(trouble.lastGoodCopyAt))}
              </p>
            </div>
            <div className="trouble-actions">
              {trouble.lastGoodCopyAt !== null && (
                <Button
                  {...gate}
                  onPress={() => void restore(trouble)}
                  label={`${frameText.restore}: ${trouble.fileName}`}
                >
                  {frameText.restore}
                </Button>
              )}
              <Button
                {...gate}
                kind="quiet"
                tip={frameText.settleTip}
                onPress={() => void settle(trouble)}
                label={`${frameText.settle}: ${trouble.fileName}`}
              >
                {frameText.settle}
              </Button>
            </div>
          </li>
        ))}
      </ul>
    </Dialog>
  );
}
