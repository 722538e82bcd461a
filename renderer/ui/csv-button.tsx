// A small button that has a table written as a CSV file and says where it is.
import type { Table } from '../../app/contract/table-channels.ts';
import { ask } from '../bridge.ts';
import { notify } from '../state/notice-store.ts';
import { errorSentence } from '../text/errors.ts';
import { tableText as text } from '../text/tables.ts';
import { Button } from './button.tsx';

async function write(table: Table): Promise<void> {
  const answer = await ask('table:export', table);
  if (!answer.ok) notify('problem', errorSentence(answer.error));
  else
    notify('done', text.saved(answer.value.fileName), {
      label: text.showFolder,
      onPress: () => void ask('table:show-folder', {}),
    });
}

export function CsvButton({ table, what }: { readonly table: () => Table; readonly what: string }) {
  return (
    <Button kind="quiet" label={text.saveWhat(what)} tip={text.saveWhat(what)} onPress={() => void write(table())}>
      {text.save}
    </Button>
  );
}
