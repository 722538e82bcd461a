// The code requests of the seen vehicle of which a letter can be printed, to choose one from; none for other kinds of sheets.
import { useEffect, useState } from 'react';
import type { LotRow } from '../../../app/contract/views.ts';
import { shippedCodeKinds } from '../../../app/domain/codes/code-kinds.ts';
import { codeName } from '../../../app/domain/codes/code-name.ts';
import { letterRequests } from '../../../app/domain/sheets/code-letter.ts';
import type { SheetKind } from '../../../app/domain/sheets/sheet.ts';
import { capitalised } from '../../../app/domain/sheets/sheet-words.ts';
import { ask } from '../../bridge.ts';
import { useDesk } from '../../state/desk-store.ts';

type Choice = { readonly value: string; readonly label: string };
const none: readonly Choice[] = [];

export function useLetterRequests(kind: SheetKind, row: LotRow): readonly Choice[] {
  const kinds = useDesk().shop?.codeKinds ?? shippedCodeKinds;
  const [found, setFound] = useState<{ readonly of: string; readonly choices: readonly Choice[] } | null>(null);
  useEffect(() => {
    let isWanted = true;
    if (kind !== 'code-letter') return;
    // What cannot be read has no letter either; the preview says why.
    void ask('vehicle:open', { id: row.id }).then((answer) => {
      if (!isWanted) return;
      const vehicle = answer.ok ? answer.value.vehicle : null;
      const ids = vehicle === null ? [] : letterRequests(vehicle, { codeKinds: kinds });
      const requests = vehicle?.codeRequests.filter(({ id }) => ids.includes(id)) ?? [];
      const choices = requests.map((request) => ({
        value: request.id,
        label: [capitalised(codeName(request, kinds)), request.askedOf].join(', '),
      }));
      setFound({ of: row.id, choices });
    });
    return () => {
      isWanted = false;
    };
  }, [kind, row, kinds]);
  return kind === 'code-letter' && found?.of === row.id ? found.choices : none;
}
