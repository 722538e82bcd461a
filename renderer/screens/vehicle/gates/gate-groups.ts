// The gates that hold a vehicle, grouped for reading: each by itself, the shop's checks that follow each other as one. Pure.

import { type Actor, type Gate, type GateItem, isHolding } from '../../../../app/domain/readiness/gate.ts';
import type { Day } from '../../../../app/domain/shared/day.ts';

export type GateLine = {
  readonly gateKey: string;
  readonly text: string;
  readonly who: Actor;
  readonly since: Day | null;
  readonly place: GateItem['place'];
};
export type GateGroup = {
  readonly key: string;
  /** Null: checks of the shop's list, whose titles are the lines. */
  readonly title: string | null;
  readonly lines: readonly GateLine[];
};

function isCheck(gate: Gate): boolean {
  return gate.key.startsWith('check:');
}

/** 'Not signed: Road test' under the heading of what has to be signed is the road test; why it is stale or failed stays. */
function checkText(gate: Gate, text: string): string {
  return text === `Not signed: ${gate.title}` ? gate.title : text;
}

function linesOf(gate: Gate): readonly GateLine[] {
  return gate.items.map(({ text, who, since, place }) => ({
    gateKey: gate.key,
    text: isCheck(gate) ? checkText(gate, text) : text,
    who,
    since,
    place,
  }));
}

/** In the order of the way. */
export function gateGroups(gates: readonly Gate[]): readonly GateGroup[] {
  const groups: GateGroup[] = [];
  for (const gate of gates.filter(isHolding)) {
    const last = groups[groups.length - 1];
    if (isCheck(gate) && last !== undefined && last.title === null)
      groups[groups.length - 1] = { ...last, lines: [...last.lines, ...linesOf(gate)] };
    else groups.push({ key: gate.key, title: isCheck(gate) ? null : gate.title, lines: linesOf(gate) });
  }
  return groups;
}
