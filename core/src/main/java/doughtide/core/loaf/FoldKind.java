package doughtide.core.loaf;

/** How a dough is folded (common practice, no source). */
public enum FoldKind {
  /** Slapped on the bench and folded over itself, again and again: builds a slack dough early. */
  SLAP,
  /** Each side is stretched up and folded over the middle. */
  STRETCH,
  /** Pulled out on the wet bench to a thin sheet and folded up. */
  LAMINATION,
  /** Lifted in the middle so that both ends tuck under: gentle, keeps the gas. */
  COIL
}
