/**
 * The command line: what can be asked of the program, and how its answers look in a terminal. Knows nothing of how a
 * site is put together.
 */
package groundbass.cli;
