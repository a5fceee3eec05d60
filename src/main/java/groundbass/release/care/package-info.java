/** Stored files as a whole: who names them, what is damaged, and how it is made again. */
package groundbass.release.care;
