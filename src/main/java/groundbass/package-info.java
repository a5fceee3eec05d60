/** The command line, and the one place where the parts are wired. Nothing below knows this package. */
package groundbass;
