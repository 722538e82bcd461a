// Writes sheets as PDF files and says where they are. One place for the vehicle screen and the sheets screen.
import type { ChannelOutput } from '../../app/contract/channels.ts';
import type { SheetKind } from '../../app/domain/sheets/sheet.ts';
import { ask } from '../bridge.ts';
import { errorSentence } from '../text/errors.ts';
import { sheetsText } from '../text/sheets.ts';
import { notify } from './notice-store.ts';

export type Printed = ChannelOutput<'sheet:print'>[number];

export async function openPrinted(fileName: string): Promise<void> {
  const answer = await ask('sheet:open', { fileName });
  if (!answer.ok) notify('problem', errorSentence(answer.error));
}

export async function showSheetsFolder(): Promise<void> {
  const answer = await ask('sheet:show-folder', {});
  if (!answer.ok) notify('problem', errorSentence(answer.error));
}

/** The files that were written; none when it could not be done, which is then said. One file is offered to be opened at once. */
export async function printSheets(
  kind: SheetKind,
  vehicleIds: readonly string[],
  factId: string | null = null,
): Promise<readonly Printed[]> {
  const about = factId === null ? {} : { factId };
  const answer = await ask('sheet:print', { kind, vehicleIds: [...vehicleIds], ...about });
  if (!answer.ok) {
    notify('problem', errorSentence(answer.error));
    return [];
  }
  const [only, ...others] = answer.value;
  if (only !== undefined && others.length === 0)
    notify('done', sheetsText.written(only.fileName), {
      label: sheetsText.open,
      onPress: () => void openPrinted(only.fileName),
    });
  else
    notify('done', sheetsText.writtenMany(answer.value.length), {
      label: sheetsText.showFolder,
      onPress: () => void showSheetsFolder(),
    });
  return answer.value;
}
