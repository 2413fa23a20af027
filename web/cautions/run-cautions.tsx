import type { Element } from '../../src/duct/index.ts';
import type { CautionName } from '../cautions.ts';
import { Caution } from './caution.tsx';

/** Pipes and hoses that gather static. */
const PLASTIC: ReadonlySet<string> = new Set(['pvc-pipe', 'drain-pipe', 'flexible-hose', 'smooth-bore-hose']);

/** Dangers that come with what a run of duct is made of, shown while that run is open. */
export function RunCautions({ elements }: { elements: readonly Element[] }) {
  const names: CautionName[] = [];
  if (elements.some((e) => e.kind === 'pipe' && PLASTIC.has(e.surface ?? ''))) names.push('plasticStatic');
  if (elements.some((e) => e.kind === 'cyclone')) names.push('collapsingDrum');
  return (
    <>
      {names.map((name) => (
        <Caution key={name} name={name} />
      ))}
    </>
  );
}
