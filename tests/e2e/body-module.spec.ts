// A body module exchanged on a vehicle of the sample, from its first scan to its last: a route that fails and the next one offered from the
// shop's own history, the VIN that must be the vehicle's, a reason without which nobody goes on regardless, a radio that asks for its code
// while the rest of the job goes on. One long test, because each step stands on the ones before it.
import { add, fact, form, goTo, keep, openVehicle, section } from './at-the-desk.ts';
import { expect, test } from './fixtures.ts';
import { attemptStep, doByPress, fillAttempt, pressAt, stepLine } from './programming-steps.ts';

const stockNumber = 'Q1124';
const save = 'Read and save the data of the old Body';
const software = 'Write the software of Body';
const identity = 'Let Body take over the anti-theft identity that the vehicle has kept';
const keys = 'Teach Keys to the module that is new to them';
const radioCode = 'Enter the unlock code of Radio';
const onVehicle = 'Done: on the vehicle';

test('a body module is exchanged: routes, VIN, a reason to go on, and a radio that wants its code', async ({
  page,
}) => {
  test.setTimeout(180_000);
  const technician = page.getByLabel('At the desk');
  await technician.selectOption({ label: 'Tomas Ferrick, technician' });
  const programming = section(page, 'Programming');
  let tail = '';

  await test.step('next jobs brings the technician to it, without any amount', async () => {
    await goTo(page, 'Next jobs');
    await expect(page.getByRole('heading', { level: 1, name: 'Next jobs' })).toBeVisible();
    const ours = page.getByRole('listitem', { name: new RegExp(`^\\d+\\. ${stockNumber} `) });
    await expect(ours).toContainText('Body: Scan every module and keep the result');
    await expect(ours).not.toContainText(/USD|\d\.\d\d/);
    await ours.getByRole('button', { name: /^Go to it: Body: Scan/ }).click();
    await expect(page.getByRole('heading', { level: 1 })).toContainText(stockNumber);
    await expect(programming).toContainText('0 of 23 steps done');
    tail = ((await fact(page, 'VIN').first().textContent()) ?? '').replaceAll(/\s/g, '').slice(-8);
    expect(tail).toMatch(/^[A-HJ-NPR-Z0-9]{8}$/);
  });

  await test.step('the picture of the order says in words how far it is', async () => {
    await expect(
      programming.getByRole('img', { name: /^The order of 23 steps in \d+ columns.*; 0 done, next: 1\./ }),
    ).toBeVisible();
  });

  await test.step('the first route fails; the next ones are offered from the shop’s own history', async () => {
    await doByPress(page, [
      ['Scan every module and keep the result', onVehicle],
      ['Compare the VIN on the vehicle with the papers and with every module that tells one'],
    ]);
    await expect(stepLine(page, 'Ignition off, note stored settings, negative battery lead off')).toContainText(
      `after: ${save}`,
    );
    await attemptStep(page, save, { outcome: 'Failed', message: 'no answer' });
    const line = stepLine(page, save);
    await expect(line).toContainText('Failed 18 Mar · On the vehicle · Tomas Ferrick · no answer');
    await expect(line).toContainText(
      /Next: On the bench: worked in \d+ of \d+ tries on this kind of module; estimate \d+ %/,
    );
    await expect(line.getByRole('button', { name: /^Next: /, exact: false }).first()).toHaveAccessibleName(
      `Next: On the bench: ${save}`,
    );
    await expect(line.getByRole('button', { name: `Next: On the vehicle: ${save}` })).toHaveCount(0);
    await attemptStep(page, save, { button: 'Next: Maker’s software, pass-through device' });
    await expect(line).toContainText('done 18 Mar');
  });

  await test.step('nobody goes on regardless without a reason', async () => {
    const lead = 'Ignition off, note stored settings, negative battery lead off';
    const takeOut = 'Take the old Body out, label it and keep it';
    await stepLine(page, takeOut).getByText('More', { exact: true }).click();
    await pressAt(page, 'Go on regardless …', takeOut);
    const regardless = form(page, takeOut);
    await expect(regardless).toContainText('The negative battery lead is not off.');
    for (const reason of ['', 'ok']) {
      await regardless.getByLabel('Why *').fill(reason);
      await regardless.getByRole('button', { name: 'Add', exact: true }).click();
      await expect(regardless.getByLabel('Why *')).toHaveAccessibleDescription(/^Write why you go on regardless/);
    }
    await regardless.getByRole('button', { name: 'Put back' }).click();
    await expect(regardless).toHaveCount(0);
    await doByPress(page, [[lead], [takeOut], ['Fit Body'], ['Negative battery lead back on']]);
  });

  await test.step('the radio has lost its power: its code is missing, and only the radio waits for it', async () => {
    await doByPress(page, [['Look for units that locked while power was off']]);
    await expect(stepLine(page, radioCode)).toContainText('The code for Radio is not in hand.');
    await doByPress(page, [['Connect the supply and write down the volts']]);
    await expect(stepLine(page, software)).toContainText('Cannot be undone');
  });

  await test.step('what cannot be undone is refused on another VIN, and the right one is not shown', async () => {
    const open = await fillAttempt(page, software, { route: 'On the vehicle', vin: 'KW757278', voltsBefore: '11.9' });
    await expect(open.getByRole('status').filter({ hasText: '11.9 V before programming is too low' })).toBeVisible();
    await open.getByLabel('Volts before', { exact: true }).fill('13.4');
    await expect(open.getByText('is too low')).toHaveCount(0);
    await open.getByRole('button', { name: 'Add', exact: true }).click();
    const vin = open.getByLabel('Last eight of the VIN, read from the vehicle *');
    await expect(vin).toBeFocused();
    await expect(vin).toHaveAccessibleDescription(/This is not the VIN on record. Do not write anything./);
    await expect(open).not.toContainText(tail);
    await vin.fill(tail.toLowerCase());
    await keep(open, 'Add');
    await expect(stepLine(page, software)).toContainText('done 18 Mar');
    await attemptStep(page, 'Write the VIN into Body', { vin: tail });
    await attemptStep(page, 'Write the configuration of Body');
  });

  await test.step('a missing key is gone past by name and reason, and that stays written', async () => {
    await expect(stepLine(page, identity)).toContainText('Not every key that belongs to the vehicle is here.');
    const reason = 'The second key is with the seller, who brings it tomorrow.';
    await pressAt(page, 'Go on regardless …', identity);
    const open = form(page, identity);
    await open.getByLabel('Last eight of the VIN, read from the vehicle *').fill(tail);
    await open.getByLabel('Why *').fill(reason);
    await keep(open, 'Add');
    await expect(stepLine(page, identity)).toContainText(`went on regardless (Tomas Ferrick): ${reason}`);
    await page.getByRole('button', { name: 'Every key is here: I vouch for it' }).click();
    await attemptStep(page, keys, { vin: tail });
  });

  await test.step('the rest of the job goes on, to the scan after the repair', async () => {
    await doByPress(page, [
      ['Write down the lowest volts and the volts now, then take the supply off'],
      ['Cycle the ignition and let the modules sleep'],
      ['Clear the codes in every module', onVehicle],
      ['Scan every module again and keep the result', onVehicle],
      ['Start the engine with each key, and lock and unlock with each'],
      ['Try every function of Body, standing'],
      ['Let the old Body go'],
    ]);
    await add(page, 'Add scan', { Kind: 'After the repair' });
    await expect(programming).toContainText('21 of 23 steps done');
    await expect(stepLine(page, radioCode)).toContainText('The code for Radio is not in hand.');
    await expect(programming).toContainText('Waits: no code is asked for Radio.');
  });

  await test.step('the manager asks for the radio’s code, it is given, and the job is finished', async () => {
    await technician.selectOption({ label: 'Ruth Ambersley, manager' });
    await add(page, 'Add code request', {
      Kind: 'Radio code',
      Module: 'Radio',
      'Serial number of the unit': 'A2C0451177BT2K',
      'Document seen': 'Auction invoice',
      'Checked on': '2026-03-18',
      'Asked on': '2026-03-18',
      'Answered on': '2026-03-18',
      Answer: 'Given',
    });
    await page.getByRole('button', { name: 'Correct the job: Body' }).click();
    const job = form(page, 'Correct: Body');
    await job
      .getByRole('group', { name: 'Module 3' })
      .getByLabel('Needs the code')
      .selectOption({ label: 'radio code' });
    await expect(job).toContainText('The plan stays as it was made.');
    await keep(job, 'Save');
    await doByPress(page, [[radioCode]]);
    await pressAt(page, 'Done', 'Try every function of Radio');
    await expect(programming.getByText('finished')).not.toHaveCount(0);
  });
});

test('an order of the maker that the rules do not agree with is shown, and accepted by name and reason', async ({
  page,
}) => {
  test.setTimeout(90_000);
  await openVehicle(page, stockNumber);
  const programming = section(page, 'Programming');
  await page.getByRole('button', { name: 'Maker’s own order: Body' }).click();
  const order = form(page, 'Correct: Body');
  await order.getByLabel('Document, with its reference *').fill('Sandrell SI 84-207');
  for (const title of ['Write the configuration of Body', 'Write the VIN into Body'])
    await order.getByLabel('Next step').selectOption({ label: title });
  await expect(order).toContainText('The maker’s order and the rule pack do not agree');
  await keep(order, 'Save');
  await expect(programming).toContainText('The order is not settled.');
  const contradiction = programming.getByRole('region', { name: 'What does not agree' });
  await expect(contradiction).toContainText('rule vin-before-configuration gives way');
  await page.getByRole('button', { name: 'Accept contradiction 1' }).click();
  const accept = form(page, 'Accept contradiction 1');
  await accept.getByRole('button', { name: 'Accept it' }).click();
  await expect(accept.getByRole('alert')).toContainText('Say why');
  await accept.getByLabel('Why that is right for this vehicle *').fill('The document says so for this model year.');
  await keep(accept, 'Accept it');
  await expect(contradiction).toContainText(
    'Accepted by Ruth Ambersley on 18 Mar: The document says so for this model year.',
  );
  await expect(programming).not.toContainText('The order is not settled.');
});

test('a rule that the shop changes counts the version up and orders no running job anew', async ({ page }) => {
  test.setTimeout(90_000);
  await goTo(page, 'Setup');
  const rules = form(page, 'Rules of programming');
  await expect(rules).toContainText('The rules that the program comes with, version 1.');
  await rules.getByLabel('Search steps and rules').fill('cycle the ignition');
  await rules.getByRole('button', { name: /^Cycle the ignition and let the modules sleep/ }).click();
  await rules.getByLabel('Title *').fill('');
  await rules.getByRole('button', { name: 'Save Rules of programming' }).click();
  await expect(rules.getByLabel('Title *')).toHaveAccessibleDescription(/^Write something here\./);
  await rules.getByLabel('Title *').fill('Ignition off, doors locked, ten minutes');
  await rules.getByRole('button', { name: 'Save Rules of programming' }).click();
  await expect(rules).toContainText('Your own copy, version 2, changed 18 Mar.');
  await goTo(page, 'Lot');
  await openVehicle(page, stockNumber);
  const programming = section(page, 'Programming');
  await expect(programming).toContainText('Cycle the ignition and let the modules sleep');
  await expect(programming).toContainText('The rules are at version 2 now.');
  await page.getByRole('button', { name: 'Make the plan again: Body' }).click();
  const again = form(page, 'Correct: Body');
  await keep(again, 'Save');
  await expect(programming).toContainText('Ignition off, doors locked, ten minutes');
  await expect(programming).not.toContainText('The rules are at version 2 now.');
});
