/** From tokens to what was typed, line by line. Knows nothing of time: what a count means is worked out later. */
package groundbass.linetext.read;
