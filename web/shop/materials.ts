import type { Material } from '../../src/duct/materials.ts';
import type { CautionName } from '../cautions.ts';

/** In the order a shop meets them. */
export const MATERIAL_ORDER: readonly Material[] = [
  'wood-shavings',
  'wood-dust',
  'metal-grinding',
  'textile-lint',
  'light-powder',
];

/** Which dangers come with what is carried. */
export const SPARKS_OR_DUST: Record<Material, readonly CautionName[]> = {
  'wood-shavings': ['sparks', 'mask'],
  'wood-dust': ['dustExplosion', 'sparks', 'mask'],
  'metal-grinding': ['sparks', 'mask'],
  'textile-lint': ['dustExplosion', 'mask'],
  'light-powder': ['dustExplosion', 'mask'],
};
