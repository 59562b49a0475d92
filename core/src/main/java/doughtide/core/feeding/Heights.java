package doughtide.core.feeding;

import doughtide.core.Internal;
import java.io.Serializable;

/**
 * Greatest height of a starter, as a multiple of its height right after feeding.
 *
 * @param low one starter in ten stays below
 * @param likely half stay below
 * @param high one in ten rises higher
 */
@Internal
public record Heights(double low, double likely, double high) implements Serializable {}
