// What the program is, what it is made of and under which licences.
import './about-dialog.css';
import { useEffect, useState } from 'react';
import type { ProgramView } from '../../app/contract/program-channels.ts';
import { ask } from '../bridge.ts';
import { aboutText } from '../text/about.ts';
import { commonText } from '../text/common.ts';
import { errorSentence } from '../text/errors.ts';
import { Button } from '../ui/button.tsx';
import { Dialog } from '../ui/dialog.tsx';
import { Facts } from '../ui/facts.tsx';

export function AboutDialog({ onClose, onReport }: { readonly onClose: () => void; readonly onReport: () => void }) {
  const [view, setView] = useState<ProgramView | null>(null);
  const [trouble, setTrouble] = useState('');
  useEffect(() => {
    void ask('program:read', {}).then((answer) => {
      if (answer.ok) setView(answer.value);
      else setTrouble(errorSentence(answer.error));
    });
  }, []);
  return (
    <Dialog
      title={aboutText.title}
      onClose={onClose}
      isWide
      footer={
        <>
          <Button onPress={onReport}>{aboutText.showReport}</Button>
          <Button kind="main" onPress={onClose}>
            {commonText.close}
          </Button>
        </>
      }
    >
      <p>{aboutText.what}</p>
      <p>{aboutText.caution}</p>
      {trouble !== '' && <p role="alert">{trouble}</p>}
      {view === null ? (
        trouble === '' && <p role="status">{aboutText.reading}</p>
      ) : (
        <>
          <Facts
            rows={[
              { label: aboutText.version, value: view.version },
              { label: aboutText.runtime, value: view.runtime },
              { label: aboutText.system, value: view.system },
            ]}
          />
          <h3>{aboutText.inside}</h3>
          <p className="quiet">{aboutText.runtimeLicences}</p>
          {view.packages.map(({ name, version, licence, text }) => (
            <details key={`${name} ${version}`} className="about-licence">
              <summary>{`${name} ${version}, ${licence}`}</summary>
              <pre>{text}</pre>
            </details>
          ))}
        </>
      )}
    </Dialog>
  );
}
