// The list of keys.

import { frameText } from '../text/frame.ts';
import { keyGroups } from '../text/keys.ts';
import { Dialog } from '../ui/dialog.tsx';

export function KeysDialog({ onClose }: { readonly onClose: () => void }) {
  return (
    <Dialog title={frameText.keys} onClose={onClose}>
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
