// Prints the letter of one code request, or says what is missing for it: proof of ownership first of all.
import { shippedCodeKinds } from '../../../../app/domain/codes/code-kinds.ts';
import type { CodeRequestDraft } from '../../../../app/domain/codes/code-request.ts';
import { whyNotWritten } from '../../../../app/domain/sheets/code-letter.ts';
import { printSheets } from '../../../state/print-sheets.ts';
import { codeText } from '../../../text/codes.ts';
import { ledgerText } from '../../../text/vehicle.ts';
import { Button } from '../../../ui/button.tsx';
import { mayPrint } from '../may-change.ts';
import { useVehicle } from '../page/vehicle-context.ts';

export function CodeLetterButton({ request, name }: { readonly request: CodeRequestDraft; readonly name: string }) {
  const { id, vehicle, desk, role } = useVehicle();
  const isWaiting = request.answeredOn === null && request.closedOn === null;
  const kept = vehicle.codeRequests.find((one) => one.id === request.id);
  if (!isWaiting || kept === undefined || !mayPrint(role, 'code-letter')) return null;
  const why = whyNotWritten(kept, vehicle, { codeKinds: desk.shop?.codeKinds ?? shippedCodeKinds });
  return (
    <Button
      kind="quiet"
      label={ledgerText.actionFor(codeText.printLetter, name)}
      isDisabled={why !== null}
      whyDisabled={why ?? undefined}
      onPress={() => void printSheets('code-letter', [id], request.id)}
    >
      {codeText.printLetter}
    </Button>
  );
}
