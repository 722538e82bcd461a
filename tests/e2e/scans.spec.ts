// What scanners say, in the running program: a report is pasted and corrected, raw bytes and monitors are entered, two scans are compared,
// what many modules point at becomes a fault, and the shop's notebook finds the earlier case.
import type { Locator, Page } from '@playwright/test';
import { inspectionSchemes } from '../../app/domain/diagnosis/inspection-schemes.ts';
import {
  makeDecision,
  makeFault,
  makeLabour,
  makePart,
  makePerson,
  makeShop,
  makeVehicle,
} from '../helpers/vehicle-maker.ts';
import { fill, form, gates, goTo, keep, openVehicle, section } from './at-the-desk.ts';
import { expectAccessible } from './axe.ts';
import { expect, type Program, test } from './fixtures.ts';
import { records } from './lay-records.ts';

const today = '2026-03-18';
const shop = {
  ...makeShop({ checklist: [] }),
  people: [
    makePerson('manager-1', { name: 'Mara Lindqvist', role: 'manager' }),
    makePerson('technician-1', { name: 'Tove Lund' }),
  ],
  inspection: { chosenId: 'us-california', schemes: [...inspectionSchemes] },
  sample: { today },
};

/** An earlier vehicle: its body module was dead, a used one for 180.00 and an hour's work fixed it in nine days. */
const earlierFault = makeFault('2026-01-05', {
  what: 'body module silent',
  area: 'control-module',
  module: 'Body control module',
  codes: ['U0140'],
  decision: makeDecision('2026-01-06', { kind: 'replace' }),
  doneOn: '2026-01-14',
});
const earlier = makeVehicle('2026-01-02', {
  id: 'earlier',
  identity: { stockNumber: 'B-7', vin: '', vinReason: 'plate unreadable' },
  faults: [earlierFault],
  parts: [
    makePart('2026-01-06', {
      what: 'body module',
      faultId: earlierFault.id,
      priceCents: 180_00,
      orderedOn: '2026-01-06',
      receivedOn: '2026-01-12',
      fittedOn: '2026-01-13',
    }),
  ],
  labour: [makeLabour('2026-01-13', { minutes: 60, faultId: earlierFault.id, area: 'control-module' })],
});
const atHand = makeVehicle('2026-03-09', {
  id: 'at-hand',
  identity: { stockNumber: 'B-21', vin: '', vinReason: 'plate unreadable', modelYear: 2012 },
});

test.use({ fleet: records(shop, [earlier, atHand]) });

const report = [
  'Workshop report, page 1 of 1',
  '',
  'Engine control module',
  '   U0140     Lost messages from body module    stored',
  '   P0442     small leak in the vapour system   present',
  'Instrument cluster',
  '   UO140     Lost messages from body module    present',
  '   P01O2     no such code in this vehicle      present',
  'Radio   no codes',
  'Body control module   no answer',
].join('\n');

async function paste(program: Program, field: Locator, text: string): Promise<void> {
  await program.app.evaluate(({ clipboard }, copied) => clipboard.writeText(copied), text);
  await field.focus();
  await program.page.keyboard.press('Control+V');
}

/** The row of a module, by its place: React sets no attribute for what is typed. */
async function rowNamed(open: Locator, name: string): Promise<Locator> {
  const rows = open.locator('.module-row');
  const count = await rows.count();
  for (let index = 0; index < count; index += 1) {
    const field = rows.nth(index).getByLabel('Module', { exact: true });
    if ((await field.inputValue()) === name) return rows.nth(index);
  }
  throw new Error(`No row of a module named ${name}`);
}

async function scanByReport(program: Program, page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Add scan', exact: true }).click();
  await paste(program, form(page, 'Add scan').getByLabel('Report of the scanner'), report);
}

test('a report is pasted, corrected, kept, and compared with the scan after the repair', async ({ page, program }) => {
  test.setTimeout(120_000);
  await openVehicle(page, 'B-21');
  const scan = form(page, 'Add scan');

  await test.step('each line of the report has what was read from it beside it', async () => {
    await scanByReport(program, page);
    const lines = scan.getByRole('region', { name: 'Report of the scanner' });
    await expect(lines.getByRole('row', { name: /Workshop report/ })).toContainText('not read');
    await expect(lines.getByRole('row', { name: /P0442/ })).toContainText('P0442 present');
    await expect(lines.getByRole('row', { name: /UO140/ })).toContainText('The report says “UO140”.');
    await expect(lines.getByRole('row', { name: /no answer/ })).toContainText('silent');
    await expect(scan.getByText('9 lines · 4 modules · 1 silent · 4 codes · 1 line not read').first()).toBeVisible();
  });

  await test.step('a code leaves with one press', async () => {
    await scan.getByRole('button', { name: 'Leave out P0102' }).click();
    await expect(scan.getByLabel('Code: P0102 in Instrument cluster')).toHaveCount(0);
  });

  await test.step('a code read through a slip is not kept until somebody has looked at it', async () => {
    await scan.getByRole('button', { name: 'Add', exact: true }).click();
    await expect(scan.getByText('Look at the codes that were read through a slip')).toBeVisible();
    await scan.getByRole('button', { name: 'It is right: U0140' }).click();
    await scan.getByLabel('Code: U0140 in Instrument cluster').fill('U0140-00');
  });

  await test.step('raw bytes of a module go into the same scan', async () => {
    await scan.getByRole('button', { name: 'Enter raw reply bytes' }).click();
    const raw = scan.getByRole('group', { name: 'Raw reply of a module' });
    await raw.getByLabel('Module').fill('Airbag');
    await raw.getByLabel('Bytes').fill('59 02 FF 80 01 1B 09 0G');
    await expect(raw.getByRole('alert')).toContainText('“0G” is not a byte');
    await raw.getByLabel('Bytes').fill('59 02 FF 80 01 1B 09');
    await expect(raw.getByRole('status')).toContainText('codes with their status (service 19): 1 code B0001-1B');
    await raw.getByRole('button', { name: 'Put into the scan' }).click();
    await expect(scan.getByLabel('Status: B0001-1B in Airbag')).toHaveValue('present');
    await raw.getByRole('button', { name: 'Close' }).click();
  });

  await test.step('it is kept, and says where to look first', async () => {
    await keep(scan, 'Add');
    await expect(section(page, 'Scans').getByRole('row', { name: /^Before the repair/ })).toContainText(
      'Body control module',
    );
    const roots = section(page, 'Scans').getByRole('region', { name: 'Where to look first' });
    await expect(roots).toContainText('2 modules store codes that speak of the body control module');
    await expect(roots).toContainText('Body control module does not answer');
  });

  const fault = form(page, 'Add fault');
  await test.step('what the others point at becomes a fault, and the notebook knows an earlier one', async () => {
    await section(page, 'Scans')
      .getByRole('button', { name: 'Make it a fault: Body control module does not answer' })
      .click();
    await expect(fault.getByLabel('What is wrong')).toHaveValue('Body control module does not answer');
    await expect(fault.getByLabel('Codes')).toHaveValue('U0140 U0140-00');
    const notebook = fault.getByRole('region', { name: 'The shop’s own notebook' });
    await expect(notebook).toContainText('1 earlier case with this module and code');
    await expect(notebook.getByRole('row', { name: /body module/ })).toContainText('usually 9 days');
    // 180.00 for the part, 60.00 for the hour.
    await expect(notebook.getByRole('row', { name: /body module/ })).toContainText('240.00 USD');
    await fill(fault, { Decision: 'Replace', 'Decided on': '2026-03-18', 'Finished on': '2026-03-18' });
    await keep(fault, 'Add');
  });

  await test.step('a code becomes a fault as well, and is repaired', async () => {
    await section(page, 'Scans')
      .getByRole('button', { name: 'Make it a fault: small leak in the vapour system' })
      .click();
    await fill(fault, { Decision: 'Repair', 'Decided on': '2026-03-18', 'Finished on': '2026-03-18' });
    await keep(fault, 'Add');
    await section(page, 'Scans').getByRole('button', { name: 'Make it a fault: B0001-1B in Airbag' }).click();
    await fill(fault, { Decision: 'Leave', Reason: 'known, lamp off' });
    await keep(fault, 'Add');
  });

  await test.step('the scan after the repair: cleared is not proven', async () => {
    await page.getByRole('button', { name: 'Add scan', exact: true }).click();
    await fill(scan, { Kind: 'After the repair', 'Codes were cleared before it': true });
    await scan.getByRole('button', { name: /^Write in the names of the 5 modules/ }).click();
    await scan.getByRole('button', { name: 'Enter monitors' }).click();
    await scan.getByLabel('Bytes A B C D').fill('41 01 00 07 65');
    await expect(scan.getByText('Four bytes of two hexadecimal digits')).toBeVisible();
    await scan.getByLabel('Bytes A B C D').fill('41 01 00 07 65 01');
    await expect(scan.getByLabel('Catalyst', { exact: true })).toHaveValue('incomplete');
    await scan.getByLabel('Evaporative system').selectOption('incomplete');
    await expect(scan.getByText('California: would fail')).toBeVisible();
    await keep(scan, 'Add');
    const rows = section(page, 'Scans').getByRole('row');
    await expect(rows.filter({ hasText: 'answers again' })).toContainText('Body control module');
    await expect(rows.filter({ hasText: 'P0442' }).first()).toContainText('Cleared, not proven');
    await expect(rows.filter({ hasText: 'P0442' }).first()).toContainText(
      'its monitor (evaporative system) has not run',
    );
    await expect(rows.filter({ hasText: 'B0001-1B' }).first()).toContainText('Gone');
    await expect(gates(page).filter({ hasText: 'P0442' })).toContainText('cleared, but not proven');
    await expect(section(page, 'Scans').getByText('California: would fail')).toBeVisible();
    await section(page, 'Scans').getByText('Why they are incomplete').click();
    await expect(section(page, 'Scans').getByText('codes cleared before this scan, 18 Mar')).toBeVisible();
  });

  await test.step('after the drive the test has run, and nothing of it holds the sale', async () => {
    await page.getByRole('button', { name: 'Add scan', exact: true }).click();
    await fill(scan, { Kind: 'After the repair' });
    await scan.getByRole('button', { name: /^Write in the names of the 5 modules/ }).click();
    await scan.getByRole('button', { name: 'Enter monitors' }).click();
    await scan.getByLabel('Bytes A B C D').fill('00 07 65 00');
    await expect(scan.getByText('California: would pass')).toBeVisible();
    await keep(scan, 'Add');
    const rows = section(page, 'Scans').getByRole('row');
    await expect(rows.filter({ hasText: 'P0442' }).first()).toContainText('tested since the clear');
    await expect(gates(page).filter({ hasText: 'P0442' })).toHaveCount(0);
  });

  await test.step('any two scans can be held against each other', async () => {
    const later = section(page, 'Scans').getByLabel('Later scan');
    await expect(later.getByRole('option')).toHaveCount(3);
    await later.selectOption({ index: 1 });
    const rows = section(page, 'Scans').getByRole('row');
    await expect(rows.filter({ hasText: 'P0442' }).first()).toContainText('Cleared, not proven');
  });

  await test.step('the report is still there as it was pasted', async () => {
    await section(page, 'Scans').getByRole('button', { name: 'Before the repair', exact: true }).click();
    const kept = form(page, 'Correct: Before the repair, 18 Mar');
    await expect(kept.getByRole('button', { name: 'Leave out P0442' })).toBeVisible();
    await expect(kept.getByRole('row', { name: /P01O2/ })).toContainText('P0102 left out');
    await kept.getByRole('button', { name: 'Only lines not read' }).click();
    await expect(kept.getByRole('row', { name: /Workshop report/ })).toBeVisible();
    await expect(kept.getByRole('row', { name: /P0442/ })).toHaveCount(0);
  });
});

test('a text file is dropped on the form, and what is no text is refused with the way out', async ({ page }) => {
  await openVehicle(page, 'B-21');
  await page.getByRole('button', { name: 'Add scan', exact: true }).click();
  const scan = form(page, 'Add scan');
  const box = scan.locator('.report-box');
  const dropFile = (name: string, content: string) =>
    box.evaluate(
      (element, [fileName = '', text = '']) => {
        const dropped = new DataTransfer();
        dropped.items.add(new File([text], fileName));
        element.dispatchEvent(new DragEvent('drop', { dataTransfer: dropped, bubbles: true, cancelable: true }));
      },
      [name, content],
    );
  await dropFile('report.pdf', '%PDF-1.7 …');
  await expect(scan.getByRole('alert')).toContainText('Only text can be read here.');
  await dropFile('report.txt', 'Engine: P0301 present\r\nBody: no answer\r\n');
  await expect(scan.getByLabel('Code: P0301 in Engine')).toHaveValue('P0301');
  await expect((await rowNamed(scan, 'Body')).getByLabel('Answered')).not.toBeChecked();
});

test('a technician finds the earlier case without its amounts, and measures the battery', async ({ page }) => {
  await page.getByLabel('At the desk').selectOption({ label: 'Tove Lund, technician' });
  await openVehicle(page, 'B-21');
  await page.getByRole('button', { name: 'Add fault', exact: true }).click();
  const fault = form(page, 'Add fault');
  await fault.getByLabel('Codes').pressSequentially('U0140');
  const notebook = fault.getByRole('region', { name: 'The shop’s own notebook' });
  await expect(notebook).toContainText('1 earlier case with this code');
  await expect(notebook).toContainText('usually 9 days');
  await expect(notebook).not.toContainText('240');
  await page.getByRole('button', { name: 'Add battery reading' }).click();
  const battery = form(page, 'Add battery reading');
  await fill(battery, { Volts: '12.45' });
  await expect(battery.getByRole('status')).toContainText('not rested');
  await fill(battery, { 'Rested six hours or more, loads off': true, Temperature: '10' });
  // Trade table: 12.45 V at 50 °F is read at 12.378 V, which is 66 %.
  await expect(battery.getByRole('status')).toContainText('66 %');
  await keep(battery, 'Add');
  await expect(section(page, 'Battery').getByRole('row', { name: /12\.45 V/ })).toContainText('66 %');
});

test('the inspection and the limits of the supply are the shop’s to edit', async ({ page }) => {
  await goTo(page, 'Setup');
  const support = form(page, 'Supply while programming');
  await support.getByRole('button', { name: 'Add a make' }).click();
  await support.getByLabel('Make, row 1').fill('Velquist');
  await support.getByLabel('Lowest, row 1').fill('13.4');
  await support.getByLabel('Highest, row 1').fill('13.2');
  await support.getByLabel('Source, row 1').fill('service information, read today');
  await support.getByRole('button', { name: 'Save Supply while programming' }).click();
  await expect(support.getByRole('alert')).toContainText('The lowest volts must be below the highest.');
  await support.getByLabel('Highest, row 1').fill('14.6');
  await support.getByRole('button', { name: 'Save Supply while programming' }).click();
  await expect(support.getByText('not saved yet')).toHaveCount(0);

  const inspections = form(page, 'Inspections');
  await inspections.getByText('California', { exact: true }).last().click();
  const first = inspections.getByLabel('At most, rule 1 of California');
  await expect(first).toHaveValue('1');
  await first.fill('2');
  await inspections.getByLabel('Compared with the rule itself on').nth(1).fill(today);
  await inspections.getByLabel('Vehicles are judged by').selectOption({ label: 'United States, federal guidance' });
  await inspections.getByRole('button', { name: 'Save Inspections' }).click();
  await expect(inspections.getByText('not saved yet')).toHaveCount(0);
  await goTo(page, 'Lot');
  await goTo(page, 'Setup');
  await expect(inspections.getByLabel('Vehicles are judged by')).toHaveValue('us-federal-guidance');
});

for (const theme of ['Light', 'Dark'] as const) {
  test(`scans stand in nobody’s way in ${theme.toLowerCase()}`, async ({ page, program }) => {
    test.setTimeout(90_000);
    await page.getByLabel('Light or dark').selectOption({ label: theme });
    await openVehicle(page, 'B-21');
    await scanByReport(program, page);
    const scan = form(page, 'Add scan');
    await scan.getByRole('button', { name: 'Enter raw reply bytes' }).click();
    await scan.getByLabel('Bytes', { exact: true }).fill('43 02 01 33');
    await scan.getByRole('button', { name: 'Enter monitors' }).click();
    await scan.getByLabel('Bytes A B C D').fill('80 07 65 04');
    await expectAccessible(page, 'a scan with its report, raw bytes and monitors');
    await scan.getByRole('button', { name: 'It is right: U0140' }).click();
    await scan.getByRole('button', { name: 'It is right: P0102' }).click();
    await keep(scan, 'Add');
    await section(page, 'Scans').getByRole('button', { name: 'Last time: U0140', exact: true }).first().click();
    await expect(section(page, 'Scans').getByRole('region', { name: 'The shop’s own notebook' })).toBeVisible();
    await page.getByRole('button', { name: 'Add battery reading' }).click();
    await expectAccessible(page, 'a scan read, with the notebook');
    await goTo(page, 'Setup');
    await form(page, 'Inspections').locator('summary').first().click();
    await expectAccessible(page, 'inspections and supply in Setup');
  });
}
