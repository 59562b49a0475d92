/** What a run of the program is given: streams, folder, clock, environment. */
@NullMarked
package doughtide.cli.session;

import org.jspecify.annotations.NullMarked;
