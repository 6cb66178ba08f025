package org.benchwright.language.internal.inspect;

import java.util.Optional;

import org.benchwright.language.RemarkCode;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.nodemodel.INode;

/**
 * Something that an inspection said. Where it stands follows the text: characters that come or go before it move it.
 *
 * @param thing  what it is about
 * @param node   the characters that it is about; empty where nothing stands for it
 * @param length how many characters from the node's first, up to the end of the line at most
 * @param code   what it says
 * @param words  the same in words
 * @param meant  what is wrong: the thing itself, or one of another file
 * @param wrong  the characters of that
 */
public record Noted(EObject thing, Optional<INode> node, int length, RemarkCode code, String words, EObject meant, Optional<INode> wrong) {

    /** Where it begins in its text as that is now. */
    public int offset() {
        return node.map(INode::getOffset).orElse(0);
    }
}
