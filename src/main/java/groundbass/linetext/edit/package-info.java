/** Changes to a text that leave alone what they do not speak of. Knows nothing of who asks for a change. */
package groundbass.linetext.edit;
