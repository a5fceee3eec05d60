/** What was acknowledged outlives a killed process: a program that is killed, and the one that kills it and counts. */
package groundbass.kill;
