// The files that were written since the program was started, the newest first. Those in the fleet's own folder open from here.
import { openPrinted, showSheetsFolder } from '../../state/print-sheets.ts';
import { sheetJobStore } from '../../state/sheet-job-store.ts';
import { useStore } from '../../state/store.ts';
import { sheetJobText } from '../../text/sheet-job.ts';
import { sheetsText } from '../../text/sheets.ts';
import { Button } from '../../ui/button.tsx';
import { SectionHead } from '../../ui/section-head.tsx';

export function WrittenFiles() {
  const { files } = useStore(sheetJobStore);
  if (files.length === 0) return null;
  return (
    <section className="printed" aria-label={sheetsText.writtenTitle}>
      <SectionHead
        title={sheetsText.writtenTitle}
        count={files.length}
        action={
          <Button kind="quiet" onPress={() => void showSheetsFolder()}>
            {sheetsText.showFolder}
          </Button>
        }
      />
      <ul>
        {files.map(({ fileName, pages, sheets, isInFolder }) => (
          <li key={fileName}>
            <span className="printed-name">{fileName}</span>
            <span className="quiet">
              {[sheetJobText.sheetsIn(sheets), sheetsText.pages(pages)].filter((words) => words !== '').join(', ')}
            </span>
            {isInFolder && (
              <Button kind="quiet" label={sheetsText.openFile(fileName)} onPress={() => void openPrinted(fileName)}>
                {sheetsText.open}
              </Button>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
