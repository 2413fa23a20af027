import { pegs } from './chance.ts';

/** Ten pegs of a rule, inked from where reading starts: the chance as a picture. */
export function Pegs({ probability }: { probability: number }) {
  return (
    <span class="pegs" aria-hidden="true">
      {pegs(probability).map((inked, i) => (
        <i key={i} class={inked === 1 ? 'full' : inked > 0 ? 'half' : ''} />
      ))}
    </span>
  );
}
