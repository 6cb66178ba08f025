package org.benchwright.ui.internal.author;

import org.benchwright.language.editing.Hover;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.IRegion;
import org.eclipse.jface.text.ITextHover;
import org.eclipse.jface.text.ITextHoverExtension2;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.Region;

/** What there is to say about the word under the pointer. The editor asks on a thread of its own. */
public final class AuthorHover implements ITextHover, ITextHoverExtension2 {

    @Override
    public IRegion getHoverRegion(ITextViewer viewer, int offset) {
        IDocument document = viewer.getDocument();
        try {
            int begin = offset;
            int end = offset;
            while (begin > 0 && isPartOfWord(document.getChar(begin - 1))) {
                begin--;
            }
            while (end < document.getLength() && isPartOfWord(document.getChar(end))) {
                end++;
            }
            return new Region(begin, end - begin);
        } catch (BadLocationException outside) {
            // The pointer is beyond the text.
            return new Region(offset, 0);
        }
    }

    private static boolean isPartOfWord(char c) {
        return Character.isLetterOrDigit(c) || c == '_' || c == '%' || c == '.';
    }

    @Override
    public Object getHoverInfo2(ITextViewer viewer, IRegion region) {
        return getHoverInfo(viewer, region);
    }

    @Override
    public String getHoverInfo(ITextViewer viewer, IRegion region) {
        return Documents.path(viewer.getDocument()).flatMap(file -> Authoring.current().flatMap(authoring -> authoring.folderOf(file)
                .knowing(file, Documents.text(viewer.getDocument())).hover(file, region.getOffset()))).map(Hover::text).orElse(null);
    }
}
