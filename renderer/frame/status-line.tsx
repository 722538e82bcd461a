// The status line: when it was saved, the last backup, why nothing can be changed, files that could not be read, light or dark.
import { useState } from 'react';
import type { Desk } from '../../app/contract/views.ts';
import { askDesk, savedAtStore } from '../state/desk-store.ts';
import { notify } from '../state/notice-store.ts';
import { goTo } from '../state/route-store.ts';
import { useStore } from '../state/store.ts';
import { frameText } from '../text/frame.ts';
import { showMoment, showTime } from '../text/instant.ts';
import { Button } from '../ui/button.tsx';
import { TakeOverDialog } from './take-over-dialog.tsx';
import { ThemeSelect } from './theme-select.tsx';

async function backUp(): Promise<void> {
  if (await askDesk('fleet:back-up', {})) notify('done', frameText.backedUp);
}

/** Which files, and putting them back after a look, is on Safety copies alone. */
function Troubles({ count, isManager }: { readonly count: number; readonly isManager: boolean }) {
  const sentence = frameText.troublesCount(count);
  if (!isManager) return <span className="status-warning">{`${sentence}: ${frameText.troublesForManager}`}</span>;
  return (
    <button
      type="button"
      className="status-warning status-link"
      title={frameText.troublesTip}
      onClick={() => goTo({ screen: 'safety' })}
    >
      {sentence}
    </button>
  );
}

export function StatusLine({ desk, onShowKeys }: { readonly desk: Desk; readonly onShowKeys: () => void }) {
  const savedAt = useStore(savedAtStore);
  const [asksTakeOver, setAsksTakeOver] = useState(false);
  const isManager = desk.person.role === 'manager';
  return (
    <footer className="status-line">
      {desk.readOnlyReason === null ? (
        <span role="status">{savedAt === null ? frameText.nothingSavedYet : frameText.savedAt(showTime(savedAt))}</span>
      ) : (
        <span role="status" className="status-warning">
          {frameText.readOnly(desk.readOnlyReason)}
        </span>
      )}
      {desk.readOnlyReason !== null && desk.canTakeOver && isManager && (
        <Button kind="quiet" onPress={() => setAsksTakeOver(true)}>
          {frameText.takeOver}
        </Button>
      )}
      {desk.troubleCount > 0 && <Troubles count={desk.troubleCount} isManager={isManager} />}
      <span>
        {desk.lastBackupAt === null ? frameText.noBackup : frameText.lastBackup(showMoment(desk.lastBackupAt))}
      </span>
      {isManager && desk.readOnlyReason === null && (
        <Button kind="quiet" onPress={() => void backUp()}>
          {frameText.backUpNow}
        </Button>
      )}
      {isManager && (
        <Button kind="quiet" tip={frameText.safetyTip} onPress={() => goTo({ screen: 'safety' })}>
          {frameText.safety}
        </Button>
      )}
      <span className="status-right">{frameText.today(desk.today)}</span>
      <span>{frameText.version(desk.appVersion)}</span>
      <ThemeSelect desk={desk} />
      <Button kind="quiet" shortcut="?" tip={frameText.keysTip} onPress={onShowKeys}>
        {frameText.keys}
      </Button>
      {asksTakeOver && <TakeOverDialog onClose={() => setAsksTakeOver(false)} />}
    </footer>
  );
}
