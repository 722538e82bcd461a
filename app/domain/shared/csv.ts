// A table as comma-separated values for spreadsheets, by RFC 4180. Encodes only; reads nothing.

export type CsvCell = string | number | null;

/**
 * A field that a spreadsheet would take for a formula gets an apostrophe before it: text typed by people must not run when it is opened
 * elsewhere. Numbers are numbers and stay as they are.
 */
function safeText(text: string): string {
  return /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
}

function field(cell: CsvCell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return String(cell);
  const text = safeText(cell);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** Records end with CRLF, a field with a comma, quote or line break is quoted, a quote inside is doubled. Source: RFC 4180, section 2. */
export function csvText(rows: readonly (readonly CsvCell[])[]): string {
  return rows.map((row) => `${row.map(field).join(',')}\r\n`).join('');
}
