// The lines at the head and foot of every page: dealer, sheet, subject; who printed it when, from which state, and which page this is.
import { type DayForm, showDay } from '../domain/shared/show-day.ts';
import { fleetSheetKindSchema, type Sheet } from '../domain/sheets/sheet.ts';
import { showMark } from '../domain/sheets/sheet-mark.ts';
import type { Logo } from './logo.ts';
import { planMarkBars } from './mark-bars.ts';
import type { PageFrame } from './page-frame.ts';
import type { Pen } from './pen.ts';
import { ink, ruleInk, type } from './type-scale.ts';

const lineHeight = type.running.lineHeight;
const headRuleGap = 3;
const footRuleGap = 3;

export type RunningLines = {
  /** Where the text of the pages may begin and must end. */
  readonly bodyTop: number;
  readonly bodyBottom: number;
  readonly draw: (page: number, pages: number) => void;
};

/** The instant in the time of the desk that prints: '4 Mar 2026, 09:12'. */
export function showInstant(instant: string, dayForm: DayForm): string {
  const date = new Date(instant);
  const two = (number: number) => number.toString().padStart(2, '0');
  const day = `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
  return `${showDay(day, dayForm)}, ${two(date.getHours())}:${two(date.getMinutes())}`;
}

export function planRunningLines(pen: Pen, frame: PageFrame, sheet: Sheet, logo: Logo | null = null): RunningLines {
  const { left, right, width } = frame;
  // Three lines high, so that it can be made out; the words stand beside it.
  const logoHeight = logo === null ? 0 : 3 * lineHeight;
  const indent = logo === null ? 0 : logo.widthAt(logoHeight) + 8;
  const half = width / 2 - 8;
  const dealer = pen.shortened(sheet.dealer.name, half - indent, type.runningStrong)[0] ?? '';
  const subject = pen.shortened(`${sheet.title} · ${sheet.subject}`, half, type.running)[0] ?? '';
  const contact = [sheet.dealer.address.replace(/\s*\n\s*/g, ', '), sheet.dealer.phone].filter((part) => part !== '');
  const contactLines = pen.shortened(contact.join(' · '), width - indent, type.running, 2);
  const bars = planMarkBars(pen, frame, sheet.mark);
  const footWidth = width - (bars?.width ?? 0);
  const footer = pen.shortened(sheet.footer, footWidth, type.running, 4);
  const notice = pen.shortened(sheet.sampleNotice, footWidth, type.runningStrong, 2);
  const headLines = Math.max(1 + contactLines.length, logo === null ? 0 : 3);
  /** Of what stands above the last line, beside the bars. */
  const footHeight = Math.max((footer.length + notice.length) * lineHeight, bars === null ? 0 : bars.height + 2);
  const footTop = frame.footBottom - footHeight - lineHeight - footRuleGap;

  const drawHead = (page: number) => {
    logo?.draw(left, frame.headTop, logoHeight);
    pen.line(dealer, left + indent, frame.headTop, type.runningStrong);
    pen.line(subject, right - pen.width(subject, type.running), frame.headTop, type.running);
    const contactShown = page === 1 ? contactLines : [];
    for (const [index, line] of contactShown.entries())
      pen.line(line, left + indent, frame.headTop + (index + 1) * lineHeight, type.running);
    const ruleY = frame.headTop + Math.max(1 + contactShown.length, logo === null ? 0 : 3) * lineHeight + headRuleGap;
    pen.rule(left, ruleY, right, ruleY, 0.5, ruleInk);
  };
  const drawFoot = (page: number, pages: number) => {
    pen.rule(left, footTop, right, footTop, 0.5, ruleInk);
    let y = footTop + footRuleGap;
    bars?.draw(y);
    for (const line of notice) {
      pen.line(line, left, y, type.runningStrong);
      y += lineHeight;
    }
    for (const line of footer) {
      pen.line(line, left, y, type.running);
      y += lineHeight;
    }
    y = footTop + footRuleGap + footHeight;
    const missing = pen.hasMissingCharacters ? ' · □ stands for a character this typeface lacks' : '';
    const isOfFleet = fleetSheetKindSchema.safeParse(sheet.kind).success;
    const state = isOfFleet ? '' : ` · record state ${sheet.revision}`;
    const mark = sheet.mark === '' ? '' : ` · mark ${showMark(sheet.mark)}`;
    const stamp = `Printed ${showInstant(sheet.printedAt, sheet.dayForm)} by ${sheet.printedBy}${state}${mark}${missing}`;
    const place = `Page ${page} of ${pages}`;
    const placeWidth = pen.width(place, { ...type.runningStrong, colour: ink });
    pen.line(pen.shortened(stamp, width - placeWidth - 12, type.running)[0] ?? '', left, y, type.running);
    pen.line(place, right - placeWidth, y, type.runningStrong);
  };
  return {
    // The same on every page, so that a row that fits one page fits the next.
    bodyTop: frame.headTop + headLines * lineHeight + headRuleGap + 9,
    bodyBottom: footTop - 6,
    draw: (page, pages) => {
      pen.decoration(() => drawHead(page), 'Pagination', 'Top');
      pen.decoration(() => drawFoot(page, pages), 'Pagination', 'Bottom');
    },
  };
}
