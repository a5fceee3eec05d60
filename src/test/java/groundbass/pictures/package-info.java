/** The pictures of README, taken from the demonstration. */
package groundbass.pictures;
