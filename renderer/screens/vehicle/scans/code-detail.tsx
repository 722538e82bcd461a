// What the number of a code tells by itself, in one small quiet line: whose number it is, what the failure type says, a rough area.
import { parseTroubleCode } from '../../../../app/domain/diagnosis/trouble-code.ts';
import { codeDetailText, scanText } from '../../../text/scans.ts';

export function codeDetail(code: string): readonly string[] {
  const parsed = parseTroubleCode(code);
  if (parsed === null) return [];
  const { system, controlledBy, failureType, hint, isModuleWorkUnfinished } = parsed;
  return [
    codeDetailText.line(system, controlledBy),
    ...(failureType === null ? [] : [codeDetailText.failure(failureType.hex, failureType.words)]),
    ...(hint === null ? [] : [codeDetailText.hint(hint)]),
    ...(isModuleWorkUnfinished ? [codeDetailText.unfinished] : []),
  ];
}

export function CodeDetail({ code, statusByte }: { readonly code: string; readonly statusByte: number | null }) {
  const words = [...codeDetail(code), ...(statusByte === null ? [] : [scanText.statusByte(statusByte)])];
  return words.length === 0 ? null : <span className="code-detail">{words.join(' · ')}</span>;
}
