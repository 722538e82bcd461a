// The end of most stories: proving the work, making the vehicle fit to be seen. Each signature is given by the person it belongs to.
import type { Day } from '../../domain/shared/day.ts';
import { checks, people } from './sample-shop.ts';
import type { Story } from './story.ts';

/** Post-repair scan and every signature that proves the work, on one day. `left` is what the scan still shows and was left on purpose. */
export function prove(story: Story, day: Day, left: readonly string[] = []): void {
  story.on(day).scan('post-repair', left, '', people.secondTechnician);
  story.sign(checks.safety, people.secondTechnician);
  story.sign(checks.keys, people.secondTechnician);
  story.sign(checks.roadTest, people.technician);
  story.sign(checks.recalls, people.manager, 'passed', 'looked up by VIN, none open');
}

export function signCleaned(story: Story): void {
  story.sign(checks.ownerData, people.sales);
  story.sign(checks.cleaned, people.sales);
}

export function signShown(story: Story): void {
  story.sign(checks.photographed, people.sales);
  story.sign(checks.windowForm, people.sales);
}

/** Cleaned and cleared on one day, photographed and the window form on another. */
export function present(story: Story, cleanedOn: Day, shownOn: Day): void {
  signCleaned(story.on(cleanedOn));
  signShown(story.on(shownOn));
}
