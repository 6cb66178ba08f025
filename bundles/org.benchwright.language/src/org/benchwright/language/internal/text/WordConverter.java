package org.benchwright.language.internal.text;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;

import org.eclipse.xtext.conversion.IValueConverter;
import org.eclipse.xtext.conversion.ValueConverterException;
import org.eclipse.xtext.nodemodel.ILeafNode;
import org.eclipse.xtext.nodemodel.INode;

/**
 * Words of a closed set. Whatever stands between several words, such as a line break or a comment, is left out.
 *
 * @param <T> what the words stand for
 */
final class WordConverter<T> implements IValueConverter<T> {

    private final Map<String, T> byWords;

    WordConverter(Map<String, T> byWords) {
        this.byWords = new LinkedHashMap<>(byWords);
    }

    @Override
    public T toValue(String text, INode node) {
        if (text == null || text.isEmpty()) {
            // The parser has said already that a word is missing.
            return null;
        }
        String words = node == null ? text : withoutHidden(node);
        T value = byWords.get(words);
        if (value == null) {
            throw new ValueConverterException(SyntaxText.UNKNOWN_WORD.text(words, String.join(", ", byWords.keySet())), node, null);
        }
        return value;
    }

    @Override
    public String toString(T value) {
        return byWords.entrySet().stream().filter(entry -> entry.getValue().equals(value)).map(Map.Entry::getKey).findFirst()
                .orElseThrow();
    }

    private static String withoutHidden(INode node) {
        return StreamSupport.stream(node.getLeafNodes().spliterator(), false).filter(leaf -> !leaf.isHidden())
                .map(ILeafNode::getText).collect(Collectors.joining(" "));
    }
}
