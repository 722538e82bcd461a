// The list of keys.
import { aboutText } from '../text/about.ts';
import { commonText } from '../text/common.ts';
import { frameText } from '../text/frame.ts';
import { keyGroups } from '../text/keys.ts';
import { Button } from '../ui/button.tsx';
import { Dialog } from '../ui/dialog.tsx';

export function KeysDialog({ onClose, onAbout }: { readonly onClose: () => void; readonly onAbout: () => void }) {
  return (
    <Dialog
      title={frameText.keys}
      onClose={onClose}
      footer={
        <>
          <Button onPress={onAbout}>{aboutText.title}</Button>
          <Button onPress={onClose}>{commonText.close}</Button>
        </>
      }
    >
      {keyGroups.map(({ where, keys }) => (
        <section key={where} className="keys-group">
          <h3>{where}</h3>
          <dl>
            {keys.map(({ key, does }) => (
              <div key={key}>
                <dt>
                  <kbd>{key}</kbd>
                </dt>
                <dd>{does}</dd>
              </div>
            ))}
          </dl>
        </section>
      ))}
    </Dialog>
  );
}
