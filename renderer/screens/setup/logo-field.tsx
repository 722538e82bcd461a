// The dealer's logo: what is printed now, another picture chosen from a file, or none. Kept at once: it is a file of its own, no setting.
import { type ChangeEvent, useEffect, useId, useRef, useState } from 'react';
import type { LogoView } from '../../../app/contract/logo-channels.ts';
import { ask } from '../../bridge.ts';
import { logoSource } from '../../state/use-logo.ts';
import { errorSentence } from '../../text/errors.ts';
import { setupText } from '../../text/setup.ts';
import { Button } from '../../ui/button.tsx';

/** Larger files are no logo; their bytes are not even read. */
const mostBytes = 2_500_000;

function asBase64(bytes: Uint8Array): string {
  let text = '';
  for (let at = 0; at < bytes.length; at += 0x8000) text += String.fromCharCode(...bytes.subarray(at, at + 0x8000));
  return btoa(text);
}

function isPicture(file: File): boolean {
  return ['image/png', 'image/jpeg'].includes(file.type);
}

/** A PNG may be see-through, which no sheet can hold: it is laid on white. Any other picture stays as it is. */
async function onWhite(file: File, picture: ImageBitmap): Promise<Blob> {
  if (file.type !== 'image/png' || picture.width > 4000 || picture.height > 4000) return file;
  const canvas = document.createElement('canvas');
  canvas.width = picture.width;
  canvas.height = picture.height;
  const pen = canvas.getContext('2d');
  if (pen === null) return file;
  pen.fillStyle = '#fff';
  pen.fillRect(0, 0, picture.width, picture.height);
  pen.drawImage(picture, 0, 0);
  const drawn = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/jpeg', 0.95));
  return drawn ?? file;
}

export function LogoField({ readOnlyReason }: { readonly readOnlyReason: string | null }) {
  const [logo, setLogo] = useState<LogoView['logo']>(null);
  const [problem, setProblem] = useState('');
  const input = useRef<HTMLInputElement>(null);
  const problemId = useId();
  useEffect(() => {
    void ask('shop:logo', {}).then((answer) => {
      if (answer.ok) setLogo(answer.value.logo);
      else setProblem(errorSentence(answer.error));
    });
  }, []);
  const keep = async (base64: string | null) => {
    const answer = await ask('shop:set-logo', { base64 });
    if (answer.ok) setLogo(answer.value.logo);
    setProblem(answer.ok ? '' : (answer.error.problems[0]?.sentence ?? errorSentence(answer.error)));
  };
  const onFile = async (event: ChangeEvent<HTMLInputElement>) => {
    const file = event.target.files?.[0];
    // Emptied, so that the same file may be chosen again once it was mended.
    event.target.value = '';
    if (file === undefined) return;
    if (file.size > mostBytes) return setProblem(setupText.logoTooLarge(Math.ceil(file.size / 1000)));
    try {
      const bytes = await file.arrayBuffer();
      // A file's first lines say nothing of the rest: it is drawn here before it is handed over. What begins like no picture at all is
      // told so by whoever judges it.
      const picture = await createImageBitmap(new Blob([bytes])).catch(() => null);
      if (picture === null && isPicture(file)) return setProblem(setupText.logoNotDrawn);
      const kept = picture === null ? file : await onWhite(file, picture);
      await keep(asBase64(new Uint8Array(await kept.arrayBuffer())));
    } catch {
      setProblem(setupText.logoUnread);
    }
  };
  const why = readOnlyReason ?? undefined;
  return (
    <fieldset className="setup-logo">
      <legend className="setup-logo-label">{setupText.logo}</legend>
      {logo !== null && (
        <img src={logoSource(logo)} alt={setupText.logoShown(logo.width, logo.height)} className="setup-logo-picture" />
      )}
      <Button isDisabled={why !== undefined} whyDisabled={why} onPress={() => input.current?.click()}>
        {logo === null ? setupText.logoChoose : setupText.logoChange}
      </Button>
      {logo !== null && (
        <Button kind="quiet" isDisabled={why !== undefined} whyDisabled={why} onPress={() => void keep(null)}>
          {setupText.logoTakeAway}
        </Button>
      )}
      <input
        ref={input}
        type="file"
        hidden
        accept="image/png,image/jpeg"
        aria-label={setupText.logoChoose}
        aria-describedby={problem === '' ? undefined : problemId}
        onChange={(event) => void onFile(event)}
      />
      {problem !== '' && (
        <p id={problemId} role="alert" className="setup-logo-problem">
          {problem}
        </p>
      )}
      <p className="setup-hint">{setupText.logoHint}</p>
    </fieldset>
  );
}
