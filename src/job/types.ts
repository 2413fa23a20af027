import type { z } from 'zod';
import type * as s from './schema.ts';

export type Job = z.infer<typeof s.Job>;
export type Site = z.infer<typeof s.Site>;
export type Supply = z.infer<typeof s.Supply>;
export type Blower = z.infer<typeof s.Blower>;
export type Wheel = z.infer<typeof s.Wheel>;
export type Drive = z.infer<typeof s.Drive>;
export type Motor = z.infer<typeof s.Motor>;
export type Evidence = z.infer<typeof s.Evidence>;
export type ChartEvidence = z.infer<typeof s.ChartEvidence>;
export type ReadingsEvidence = z.infer<typeof s.ReadingsEvidence>;
export type RatedPointEvidence = z.infer<typeof s.RatedPointEvidence>;
export type Section = z.infer<typeof s.Section>;
export type Pickup = z.infer<typeof s.Pickup>;
export type Ductwork = z.infer<typeof s.Ductwork>;
export type GatePlan = z.infer<typeof s.GatePlan>;
export type Requirement = z.infer<typeof s.Requirement>;
