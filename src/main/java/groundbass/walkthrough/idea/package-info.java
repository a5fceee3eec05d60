/** What a bar is made of: where its notes go, and which tones of the chord they are. */
package groundbass.walkthrough.idea;
