/** What the shop as a whole adds to the judgement of a blower. */
export type ShopFacts = {
  confidence: number;
  loadAtMost: number;
  returnedAir: boolean;
  sparksWithDust: boolean;
  /** a drum or a filter box hangs on the suction side */
  suctionVessel: boolean;
  /** hours of dust that the filters hold; null where that cannot be told */
  filterLife_h: number | null;
};
