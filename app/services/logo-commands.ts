// The dealer's logo for Setup: what is kept, another one, none. Judged before it is kept, so that every sheet can carry it.
import type { ChannelInput, ChannelOutput } from '../contract/channels.ts';
import { ok } from '../domain/shared/result.ts';
import { judgeLogo, keepLogo, readLogo } from '../storage/logo-file.ts';
import { type Answer, type DeskContext, refuse, refuseStorage } from './desk-context.ts';

async function view(context: DeskContext): Answer<ChannelOutput<'shop:logo'>> {
  const bytes = await readLogo(context.store.folder);
  const form = bytes === null ? null : judgeLogo(bytes);
  if (bytes === null || form === null || typeof form === 'string') return ok({ logo: null });
  const kind = form.fileName === 'logo.png' ? 'png' : 'jpeg';
  return ok({ logo: { kind, base64: bytes.toString('base64'), width: form.width, height: form.height } });
}

export async function readShopLogo(context: DeskContext): Answer<ChannelOutput<'shop:logo'>> {
  return view(context);
}

export async function setShopLogo(
  context: DeskContext,
  { base64 }: ChannelInput<'shop:set-logo'>,
): Answer<ChannelOutput<'shop:set-logo'>> {
  const { isReadOnly } = context.store;
  if (isReadOnly !== null) return refuse('read-only', isReadOnly.sentence);
  const bytes = base64 === null ? null : Buffer.from(base64, 'base64');
  const form = bytes === null ? null : judgeLogo(bytes);
  if (typeof form === 'string') return refuse('refused', '', [{ field: 'logo', sentence: form }]);
  const setting = context.store.keyFileSetting();
  const kept = await keepLogo(setting, bytes === null || form === null ? null : { fileName: form.fileName, bytes });
  return kept.ok ? view(context) : refuseStorage(kept.error);
}
