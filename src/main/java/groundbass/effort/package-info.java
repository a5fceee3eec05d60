/** How much of the machine is asked for at once and by whom. Knows nothing of what the work is, nor of the web. */
package groundbass.effort;
