import { z } from 'zod';
import { Pipe } from './pipe.ts';
import { Entry } from './entry.ts';
import { Fitting } from './fitting.ts';
import { BranchEntry } from './branch-entry.ts';
import { GateElement } from './gate.ts';
import { Exit } from './exit.ts';
import { Reducer } from './reducer.ts';
import { Cyclone } from './cyclone.ts';
import { Filters } from './filters.ts';
import { FixedResistance } from './fixed-resistance.ts';

/** Any duct element of a job. */
export const Element = z.discriminatedUnion('kind', [Pipe, Entry, Fitting, BranchEntry, GateElement, Exit, Reducer, Cyclone, Filters, FixedResistance]);
export type Element = z.infer<typeof Element>;
