package org.benchwright.ui.internal.author;

import java.nio.file.Path;
import java.util.Optional;

import org.benchwright.language.editing.Link;
import org.benchwright.ui.internal.Message;
import org.eclipse.jface.text.IRegion;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.Region;
import org.eclipse.jface.text.hyperlink.AbstractHyperlinkDetector;
import org.eclipse.jface.text.hyperlink.IHyperlink;

/** From a name to where it is declared (F3, or a click with Ctrl). Asked on the display's thread, so only what is known already is used. */
public final class AuthorLinks extends AbstractHyperlinkDetector {

    @Override
    public IHyperlink[] detectHyperlinks(ITextViewer viewer, IRegion region, boolean several) {
        Optional<Path> file = Documents.path(viewer.getDocument());
        return file.flatMap(path -> Authoring.current().flatMap(authoring -> authoring.folderOf(path).latest(path)))
                .filter(analysis -> Documents.isAbout(analysis, viewer.getDocument()))
                .flatMap(analysis -> analysis.links().stream().filter(link -> covers(link, region.getOffset())).findFirst())
                .map(link -> new IHyperlink[] {new ToDeclaration(link)}).orElse(null);
    }

    private static boolean covers(Link link, int offset) {
        return link.offset() <= offset && offset <= link.offset() + link.length();
    }

    private record ToDeclaration(Link link) implements IHyperlink {

        @Override
        public IRegion getHyperlinkRegion() {
            return new Region(link.offset(), link.length());
        }

        @Override
        public String getTypeLabel() {
            return null;
        }

        @Override
        public String getHyperlinkText() {
            return Message.AUTHOR_GO_TO_DECLARATION.text();
        }

        @Override
        public void open() {
            Passages.show(link.declaration());
        }
    }
}
