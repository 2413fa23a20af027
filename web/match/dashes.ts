/** Lines of the other gate plans, told apart by dash: dashes, dots, dash-dot. */
export const DASHES = ['7px,5px', '1.5px,5px', '12px,4px,2px,4px'] as const;
