// A chase of a part stands in the form of the part, and is removed there by keyboard.
import { form, openVehicle, section } from './at-the-desk.ts';
import { press } from './code-steps.ts';
import { expect, test } from './fixtures.ts';

test.use({ fleet: 'sample' });

test('a chase of a part is seen in its form and removed there', async ({ page }) => {
  await expect(page.getByRole('rowheader').first()).toBeVisible();
  const chased = await page.evaluate(async () => {
    const { ask } = window.lotwright;
    const list = await ask['waiting:read']({});
    const line = list.ok ? list.value.lines.find(({ kind }) => kind === 'part') : undefined;
    if (!line) throw new Error('No part is waited for in the sample.');
    const open = await ask['vehicle:open']({ id: line.vehicleId });
    if (!open.ok) throw new Error(open.error.code);
    const { vehicle, revision, today } = open.value;
    const kept = vehicle.parts.find(({ id }) => id === line.factId);
    if (!kept) throw new Error('The part is not in the record.');
    const { entered: _entered, ...item } = kept;
    const chase = { id: 'chase-0001', chasedOn: today, by: 'ruth-ambersley', how: 'phone', promisedOn: null } as const;
    const put = await ask['vehicle:change']({
      id: vehicle.id,
      baseRevision: revision,
      change: {
        kind: 'put',
        list: 'parts',
        item: { ...item, chases: [...item.chases, { ...chase, note: 'Left the yard' }] },
      },
    });
    if (!put.ok) throw new Error(JSON.stringify(put.error));
    return { stockNumber: vehicle.identity.stockNumber, what: item.what };
  });
  await openVehicle(page, chased.stockNumber);
  const row = section(page, 'Parts').getByRole('row').filter({ hasText: chased.what }).first();
  await press(row.getByRole('button').first());
  const open = form(page, `Correct: ${chased.what}`);
  const chase = open.getByRole('listitem').filter({ hasText: 'Left the yard' });
  await expect(chase).toContainText('Ruth Ambersley');
  await press(chase.getByRole('button', { name: /^Remove the chase of/ }));
  await expect(chase).toHaveCount(0);
  await press(open.getByRole('button', { name: 'Save', exact: true }));
  await expect(open).toHaveCount(0);
  await press(row.getByRole('button').first());
  await expect(open).toBeVisible();
  await expect(chase).toHaveCount(0);
});
