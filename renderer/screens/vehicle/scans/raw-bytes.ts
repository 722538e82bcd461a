// Bytes as people type or paste them, and what a reply makes of the form's rows. Pure; decoding is in app/domain/diagnosis.
import type { DiagnosticReply, ReplyCode } from '../../../../app/domain/diagnosis/diagnostic-reply.ts';
import { plainCode } from '../../../../app/domain/diagnosis/scan.ts';
import { rawText } from '../../../text/scans.ts';
import type { CodeRow } from './scan-draft.ts';

export type BytesReading =
  | { readonly ok: true; readonly bytes: readonly number[] }
  | { readonly ok: false; readonly token: string };

/** '43 02 01 33', '43,02', '0x43 0x02', '43020133': two hexadecimal digits each. The first piece that is none is handed back. */
export function readBytes(text: string): BytesReading {
  const bytes: number[] = [];
  for (const token of text.split(/[\s,;:-]+/).filter((part) => part !== '')) {
    const digits = token.replace(/^0x/i, '');
    if (!/^(?:[0-9a-f]{2})+$/i.test(digits)) return { ok: false, token };
    for (let index = 0; index < digits.length; index += 2)
      bytes.push(Number.parseInt(digits.slice(index, index + 2), 16));
  }
  return { ok: true, bytes };
}

/** A stored code is a confirmed one: that says nothing about now, so its status stays unknown. */
function codeOf(kind: DiagnosticReply['kind'], { code, statusByte }: ReplyCode): CodeRow {
  const fresh = { slip: null, origin: null };
  if (statusByte !== null)
    return {
      ...plainCode(code, statusByte.status),
      statusByte: statusByte.byte,
      isUnproven: statusByte.isUnproven,
      ...fresh,
    };
  if (kind === 'pending' || kind === 'permanent') return { ...plainCode(code, kind), ...fresh };
  return { ...plainCode(code, 'unknown', rawText.stored), ...fresh };
}

export function codesOfReply({ kind, codes }: DiagnosticReply): readonly CodeRow[] {
  return codes.map((code) => codeOf(kind, code));
}
