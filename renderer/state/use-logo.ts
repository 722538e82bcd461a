// The dealer's logo as it is printed, for whatever shows a sheet on the screen. Asked when that is drawn; Setup asks for itself.
import { useEffect, useState } from 'react';
import type { LogoView } from '../../app/contract/logo-channels.ts';
import { ask } from '../bridge.ts';

/** Null until it is known, where there is none, and where it cannot be read: a sheet is good without it. */
export function useLogo(): LogoView['logo'] {
  const [logo, setLogo] = useState<LogoView['logo']>(null);
  useEffect(() => {
    let isWanted = true;
    void ask('shop:logo', {}).then((answer) => {
      if (isWanted && answer.ok) setLogo(answer.value.logo);
    });
    return () => {
      isWanted = false;
    };
  }, []);
  return logo;
}

export function logoSource({ kind, base64 }: NonNullable<LogoView['logo']>): string {
  return `data:image/${kind};base64,${base64}`;
}
