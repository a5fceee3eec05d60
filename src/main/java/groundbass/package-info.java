/** Where the program starts. Knows the command line and nothing else. */
package groundbass;
