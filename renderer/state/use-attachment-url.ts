// The bytes of a photograph as an address that the page can show, for as long as it is shown. Asked for only when it is wanted.
import { useEffect, useState } from 'react';
import type { ChannelInput } from '../../app/contract/channels.ts';
import { ask } from '../bridge.ts';
import { errorSentence } from '../text/errors.ts';

export type ShownAttachment =
  | { readonly state: 'reading' }
  | { readonly state: 'here'; readonly url: string }
  | { readonly state: 'failed'; readonly sentence: string };

const types = { jpeg: 'image/jpeg', png: 'image/png', pdf: 'application/pdf' } as const;

export function useAttachmentUrl(
  vehicleId: string,
  attachmentId: string,
  size: ChannelInput<'attachment:read'>['size'],
  isWanted = true,
): ShownAttachment {
  const [shown, setShown] = useState<ShownAttachment>({ state: 'reading' });
  useEffect(() => {
    if (!isWanted) return;
    let isGone = false;
    let url: string | null = null;
    setShown({ state: 'reading' });
    void ask('attachment:read', { id: vehicleId, attachmentId, size }).then((answer) => {
      if (isGone) return;
      if (!answer.ok) return setShown({ state: 'failed', sentence: errorSentence(answer.error) });
      url = URL.createObjectURL(new Blob([answer.value.bytes], { type: types[answer.value.kind] }));
      setShown({ state: 'here', url });
    });
    return () => {
      isGone = true;
      if (url !== null) URL.revokeObjectURL(url);
    };
  }, [vehicleId, attachmentId, size, isWanted]);
  return shown;
}
