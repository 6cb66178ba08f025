/** Where procedures and families are written: the platform's generic editor, fed by the language's services. */
package org.benchwright.ui.author;
