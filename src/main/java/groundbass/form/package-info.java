/**
 * What became of something that a person asked for: done, or problems beside the fields that they typed in. Knows no
 * particular form.
 */
package groundbass.form;
