import type { Method as MethodName } from '../schema.ts';
import { bagFill } from './bag-fill.ts';
import { bellMouth } from './bell-mouth.ts';
import { conicalInlet } from './conical-inlet.ts';
import type { Method } from './method.ts';
import { orificeCap } from './orifice-cap.ts';
import { orificeInPipe } from './orifice-in-pipe.ts';
import { pitotTraverse } from './pitot-traverse.ts';
import { vaneTraverse } from './vane-traverse.ts';

export type { Method } from './method.ts';

/** Every way of finding the flow, the easiest first. A new one is one file and one line here. */
export const METHODS: readonly Method[] = [
  orificeCap,
  pitotTraverse,
  conicalInlet,
  bellMouth,
  orificeInPipe,
  vaneTraverse,
  bagFill,
];

/** The record of a method. Every name of the schema has one. */
export const methodNamed = (name: MethodName): Method => METHODS.find((m) => m.method === name)!;
