// The rules by which programming jobs are planned now, read once and again whenever the settings may have changed.
import { useEffect } from 'react';
import type { RulePack } from '../../app/domain/programming/rule-pack.ts';
import { ask, on } from '../bridge.ts';
import { createStore, useStore } from './store.ts';

type Known = { readonly pack: RulePack | null; readonly hasFailed: boolean };

const rulePackStore = createStore<Known>({ pack: null, hasFailed: false });
let isFollowed = false;

async function readRulePack(): Promise<void> {
  const answer = await ask('programming:pack', {});
  rulePackStore.update(({ pack }) =>
    answer.ok ? { pack: answer.value, hasFailed: false } : { pack, hasFailed: pack === null },
  );
}

/** Null until it is read, and where it could not be. Not to be asked for by whoever plans no jobs. */
export function useRulePack(isWanted: boolean): Known {
  useEffect(() => {
    if (!isWanted) return;
    if (!isFollowed) on('lot:all-changed', () => void readRulePack());
    isFollowed = true;
    void readRulePack();
  }, [isWanted]);
  return useStore(rulePackStore);
}
