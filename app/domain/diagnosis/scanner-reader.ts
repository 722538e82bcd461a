// The state of reading pasted scanner text line by line: which module is open, which heading waits for its codes, to which code wrapped
// lines belong. Used by scanner-text.ts only.
import {
  fitsColumns,
  type Line,
  moduleAfterCode,
  nearby,
  type OpenCode,
  readCodesOfLine,
  readLine,
  shorten,
  statusInCell,
  takeStatus,
} from './scanner-code-line.ts';
import { type Columns, cellOf, readColumnHeadings } from './scanner-columns.ts';
import {
  cutCount,
  isAboutReport,
  mayBeName,
  moduleBeforeCode,
  namesSeveral,
  strengthOfHeading,
  trimName,
} from './scanner-names.ts';
import { findNoCodes, findPhrase, type Place, readLabel } from './scanner-phrases.ts';
import type { FoundModule, LineUse, ScannerTextReading } from './scanner-reading.ts';
import { type FoundStatus, findStatus, saysUnproven, splitFields, statusOfWholeText } from './scanner-status.ts';
import { foldText, labelWords, silentConnectors, silentPhrases } from './scanner-words.ts';

type OpenModule = { name: string; isSilent: boolean; codes: OpenCode[]; lineNumber: number };
type Heading = { readonly name: string; readonly index: number; readonly isStrong: boolean };

export class ScannerTextReader {
  private readonly lines: readonly Line[];
  private readonly uses: LineUse[];
  /** By folded name, in the order of the text. */
  private readonly modules = new Map<string, OpenModule>();
  private current: OpenModule | null = null;
  private heading: Heading | null = null;
  private sectionStatus: FoundStatus | null = null;
  private columns: Columns | null = null;
  /** The codes of the latest code line, as long as the lines after it may belong to them. */
  private open: OpenCode[] = [];
  private openIndent = 0;
  private openedModules: OpenModule[] = [];
  /** Below 'Not answering:', until the next empty line, each line names a silent module. */
  private isSilentList = false;
  private latestBlank = -1;
  private latestStatusHeading = -1;

  constructor(text: string) {
    this.lines = text.split(/\r\n|[\n\r\f\v\u2028\u2029]/).map(readLine);
    this.uses = this.lines.map((line) => (line.isBlank ? 'blank' : 'not-understood'));
  }

  read(): ScannerTextReading {
    for (const [index, line] of this.lines.entries()) {
      if (line.isBlank) this.endParagraph(index, line);
      else this.uses[index] = this.readLineAt(index, line);
    }
    const lines = this.lines.map(({ text }, index) => ({
      lineNumber: index + 1,
      text,
      use: this.uses[index] ?? 'not-understood',
    }));
    return {
      modules: [...this.modules.values()].map(closeModule),
      lines,
      notUnderstood: lines.filter((line) => line.use === 'not-understood'),
    };
  }

  private endParagraph(index: number, line: Line): void {
    this.latestBlank = index;
    this.open = [];
    this.isSilentList = false;
    // A ruled line does not separate a heading from what it is the heading of; an empty one does, unless the heading is plain to see.
    if (line.text.trim() === '' && this.heading !== null && !this.heading.isStrong) this.heading = null;
  }

  private readLineAt(index: number, line: Line): LineUse {
    if (line.tokens.length > 0) return this.readCodeLine(index, line);
    const columns = readColumnHeadings(line.text.slice(0, nearby));
    if (columns !== null) {
      this.columns = columns;
      this.open = [];
      return 'column-heading';
    }
    const plain = line.text.slice(0, nearby);
    const isRow = this.columns !== null && trimName(cellOf(line.text, this.columns, 'module') ?? '') !== '';
    if (this.open.length > 0 && line.indent > this.openIndent && !isRow) return this.addDetail(line);
    const silent = findPhrase(plain, silentPhrases);
    if (silent !== null) return this.readSilentLine(index, line, silent);
    const noCodes = findNoCodes(plain);
    if (noCodes !== null) return this.readNoCodesLine(index, plain, noCodes);
    if (this.isSilentList && strengthOfHeading(plain) !== 'none') return this.addSilent([trimName(plain)], index);
    const label = readLabel(plain);
    if (label?.role === 'module') return this.readModuleLabel(index, label.value);
    if (this.open.length > 0 && (label?.role === 'status' || label?.role === 'words')) return this.addDetail(line);
    const strength = strengthOfHeading(plain);
    if (this.open.length > 0 && strength !== 'strong' && this.belongsToOpenCodes(plain)) return this.addDetail(line);
    const status = statusOfWholeText(cutCount(plain).name);
    if (status !== null) {
      this.sectionStatus = { status, text: trimName(cutCount(plain).name), statusByte: null };
      this.open = [];
      this.latestStatusHeading = index;
      return 'status-heading';
    }
    this.open = [];
    if (
      strength === 'none' ||
      (strength === 'weak' && this.heading?.isStrong === true && this.latestBlank < this.heading.index)
    ) {
      return 'not-understood';
    }
    this.heading = { name: trimName(cutCount(plain.trim()).name), index, isStrong: strength === 'strong' };
    return 'not-understood';
  }

  /** At the same depth as the code: wrapped text goes on in small letters or brackets, and a bare code is followed by its text. */
  private belongsToOpenCodes(text: string): boolean {
    const trimmed = text.trim();
    if (/^[\p{Ll}(]/u.test(trimmed)) return true;
    const isBare = this.open.every((code) => code.words === '');
    if (!isBare) return false;
    const status = statusOfWholeText(trimmed);
    return status === null ? !isAboutReport(trimmed) : this.sectionStatus === null && !/:\s*$/.test(trimmed);
  }

  private addDetail(line: Line): LineUse {
    const label = readLabel(line.text.slice(0, nearby));
    if (label?.role === 'module' && mayBeName(label.value) && this.hasUnnamedOpenCodes()) {
      this.moveOpenCodes(trimName(label.value));
    }
    const found = findStatus(line.text.slice(0, nearby));
    const isUnproven = saysUnproven(line.text.slice(0, nearby));
    for (const code of this.open) {
      if (found !== null && code.statusText === '') takeStatus(code, found);
      code.isUnproven ||= isUnproven;
      code.words = shorten(`${code.words} ${line.text.slice(0, nearby)}`);
    }
    return 'detail';
  }

  private readCodeLine(index: number, line: Line): LineUse {
    const first = line.tokens[0];
    const before = line.text.slice(Math.max(0, (first?.start ?? 0) - nearby), first?.start ?? 0);
    const inRow = this.columns !== null && fitsColumns(line, this.columns) ? this.columns : null;
    const cell = inRow === null ? null : cellOf(line.text, inRow, 'module');
    const named = cell !== null ? trimName(cell) : (moduleBeforeCode(before) ?? moduleAfterCode(line));
    this.isSilentList = false;
    if (named !== null && named !== '' && named.length <= 60) this.enterModule(named, index);
    else this.takeHeading();
    const module = this.current ?? this.enterModule('', index);
    const ownStatus = (inRow === null ? null : statusInCell(line.text, inRow)) ?? findStatus(before);
    const codes = readCodesOfLine(line, index, {
      columns: inRow,
      before,
      statusBefore: ownStatus,
      sectionStatus: this.sectionStatus,
      moduleName: module.name,
    });
    this.open = codes.map((code) => keepCode(module, code));
    this.openIndent = line.indent;
    this.openedModules = [module];
    return 'code';
  }

  private readSilentLine(index: number, line: Line, place: Place): LineUse {
    const text = line.text.slice(0, nearby);
    this.open = [];
    const cell = this.columns === null ? null : cellOf(line.text, this.columns, 'module');
    if (cell !== null && trimName(cell) !== '') return this.addSilent([trimName(cell)], index);
    const pieces = splitFields(text.slice(0, place.start)).map(trimName);
    const isAboutSeveral = pieces.some(namesSeveral);
    const before = pieces.find((piece) => /\p{L}/u.test(piece)) ?? pieces.find((piece) => piece !== '');
    if (before !== undefined && !isAboutSeveral && !labelWords.has(foldText(before)) && before.length <= 60) {
      return this.addSilent([before], index);
    }
    const rest = text.slice(place.end);
    const after = rest.slice(silentConnectors.exec(foldText(rest))?.[0].length ?? 0);
    const names = after.split(/[,;|]/).map(trimName);
    const isList = names.length > 0 && names.every((name) => name !== '' && mayBeName(name));
    if (isList) return this.addSilent(names, index);
    const module = isAboutSeveral ? null : this.takeHeading();
    this.isSilentList = module === null && /:\s*\d*\s*$/.test(text);
    if (module === null) return this.isSilentList ? 'status-heading' : 'not-understood';
    module.isSilent = true;
    return 'silent';
  }

  private addSilent(names: readonly string[], index: number): LineUse {
    this.heading = null;
    for (const name of names) this.enterModule(name, index).isSilent = true;
    this.current = null;
    return 'silent';
  }

  private readNoCodesLine(index: number, text: string, place: Place): LineUse {
    this.open = [];
    const cell = this.columns === null ? null : cellOf(text, this.columns, 'module');
    const pieces = splitFields(text.slice(0, place.start)).map(trimName);
    const name = cell !== null && cell !== '' ? trimName(cell) : pieces.find(mayBeName);
    if (name !== undefined && name !== '' && name.length <= 60) this.enterModule(name, index);
    else if (pieces.some(namesSeveral)) this.heading = null;
    else this.takeHeading();
    if (this.current === null && this.modules.size === 0) this.enterModule('', index);
    return 'no-codes';
  }

  /** 'Module: X' heads the codes below it; below a code it names the module of that code, as in a list of labelled values. */
  private readModuleLabel(index: number, value: string): LineUse {
    const name = trimName(cutCount(value).name);
    if (!mayBeName(name)) return 'not-understood';
    if (this.hasUnnamedOpenCodes() && !this.hasCodeBelow(index)) {
      this.moveOpenCodes(name);
      return 'module';
    }
    this.open = [];
    this.heading = { name, index, isStrong: true };
    return 'not-understood';
  }

  private hasUnnamedOpenCodes(): boolean {
    return this.open.length > 0 && this.openedModules.every((module) => module.name === '');
  }

  private hasCodeBelow(index: number): boolean {
    for (let next = index + 1; next < this.lines.length && this.lines[next]?.isBlank === false; next += 1) {
      if ((this.lines[next]?.tokens.length ?? 0) > 0) return true;
    }
    return false;
  }

  private moveOpenCodes(name: string): void {
    const from = this.openedModules;
    const module = this.enterModule(name, (this.open[0]?.lineNumber ?? 1) - 1);
    for (const other of from) {
      if (other === module) continue;
      other.codes = other.codes.filter((code) => !this.open.includes(code));
      if (other.codes.length === 0 && other.name === '') this.modules.delete('');
    }
    for (const code of this.open) if (!module.codes.includes(code)) module.codes.push(code);
    this.openedModules = [module];
    this.current = null;
  }

  /** Makes the pending heading the module that the following belongs to. Null when there is none. */
  private takeHeading(): OpenModule | null {
    if (this.heading === null) return null;
    const { name, index } = this.heading;
    this.uses[index] = 'module';
    // A status heading above a module's heading ends there; one between the heading and its codes goes on.
    if (this.latestStatusHeading < index) this.sectionStatus = null;
    return this.enterModule(name, index);
  }

  private enterModule(name: string, index: number): OpenModule {
    this.heading = null;
    const folded = foldText(name);
    this.current = this.modules.get(folded) ?? { name, isSilent: false, codes: [], lineNumber: index + 1 };
    this.modules.set(folded, this.current);
    return this.current;
  }
}

function closeModule(module: OpenModule): FoundModule {
  const { name, isSilent, codes, lineNumber } = module;
  return { name, answered: codes.length > 0 || !isSilent, codes, lineNumber };
}

/** Adds the code, or gives the same code with the same status that the module already has. */
function keepCode(module: OpenModule, code: OpenCode): OpenCode {
  const known = module.codes.find((one) => one.code === code.code && one.status === code.status);
  if (known !== undefined) return known;
  module.codes.push(code);
  return code;
}
