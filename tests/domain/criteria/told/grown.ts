/** A usable urine culture. */
export const coli = [["Escherichia coli", ">100000"]] as const;
/** A common commensal of the skin. */
export const skin = [["Staphylococcus epidermidis", ">100000"]] as const;
/** A catheter since day 2, still in place. */
export const since2 = [[2, null]] as const;
